import { Button, NativeSelect } from '@mantine/core';
import type { ConfirmHold } from '@archwright/contracts';
import { useState } from 'react';
import { useNow } from '../look/clock.js';
import { Tag } from '../look/marks.js';
import { Notice } from '../look/notice.js';
import { timeLeft } from '../time/wording.js';
import { offerWords as words } from '../words/case.js';

interface Props {
  expiresAt: string;
  /** How many next visits may be made firm alone. */
  choices: number[];
  pending: boolean;
  onConfirm: (firm: ConfirmHold['firm']) => void;
  onRelease: () => void;
  onAgain: () => void;
}

/** A hold with its time running, and the ways out of it. */
export function HoldBar({ expiresAt, choices, pending, onConfirm, onRelease, onAgain }: Props) {
  const now = useNow(1000);
  const [firm, setFirm] = useState(choices[0] ?? 1);
  const untilMs = Date.parse(expiresAt);
  if (now >= untilMs) {
    return (
      <Notice tone="caution">
        <div className="stack-tight">
          <p>{words.expired}</p>
          <div>
            <Button variant="default" onClick={onAgain}>
              {words.again}
            </Button>
          </div>
        </div>
      </Notice>
    );
  }
  return (
    <div className="stack-tight">
      <div className="row">
        <Button
          loading={pending}
          onClick={() => {
            onConfirm('all');
          }}
        >
          {words.confirmAll}
        </Button>
        <Tag tone="accent">{words.held(timeLeft(untilMs, now))}</Tag>
      </div>
      {choices.length > 0 ? (
        <div className="row">
          <NativeSelect
            aria-label={words.firm}
            value={String(firm)}
            data={choices.map((n) => ({ value: String(n), label: words.firmOption(n) }))}
            onChange={(event) => {
              setFirm(Number(event.currentTarget.value));
            }}
          />
          <Button
            variant="default"
            disabled={pending}
            onClick={() => {
              onConfirm(firm);
            }}
          >
            {words.firmGo}
          </Button>
        </div>
      ) : null}
      <div>
        <Button variant="subtle" disabled={pending} onClick={onRelease}>
          {words.release}
        </Button>
      </div>
    </div>
  );
}
