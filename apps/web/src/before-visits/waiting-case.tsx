import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { Mark } from '../look/marks.js';

interface Props {
  row: { caseId: string; caseNumber: string; patientName: string };
  children?: ReactNode;
}

/** Whose case it is that waits, by its two identifiers. */
export function WaitingCase({ row, children }: Props) {
  return (
    <div className="row">
      <Mark shape="needs-person" />
      <Link to="/desk/cases/$caseId" params={{ caseId: row.caseId }} className="strong">
        {row.caseNumber} · {row.patientName}
      </Link>
      {children}
    </div>
  );
}
