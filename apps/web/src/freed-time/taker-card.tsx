import { Button } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { Phone } from '../look/phone.js';
import { freedWords as words } from '../words/freed-time.js';
import { apart } from '../words/plural.js';
import type { TakerRow } from './freed-time-view.js';

interface Props {
  row: TakerRow;
  pending: boolean;
  onPreview: () => void;
  /** What would change, once it was asked for. */
  children: ReactNode;
}

/** One case that gains: what, and whom to call. */
export function TakerCard({ row, pending, onPreview, children }: Props) {
  return (
    <li className="line stack-tight">
      <div className="row">
        <span className="strong">{row.patient}</span>
        <Phone number={row.phone} />
        <Link to="/desk/cases/$caseId" params={{ caseId: row.caseId }}>
          {row.caseNumber}
        </Link>
      </div>
      <p>{row.sentence}</p>
      <p className="soft">{row.placement === null ? row.move : apart([row.move, row.placement])}</p>
      {children ?? (
        <div>
          <Button variant="default" loading={pending} aria-label={words.previewOf(row.patient)} onClick={onPreview}>
            {words.preview}
          </Button>
        </div>
      )}
    </li>
  );
}
