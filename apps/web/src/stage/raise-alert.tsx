import { Button, Textarea } from '@mantine/core';
import type { OpenRemakeAlert, StageView } from '@archwright/contracts';
import { useState } from 'react';
import { Refusal } from '../look/notice.js';
import { stageWords as words } from '../words/chair.js';

interface Props {
  view: StageView;
  pending: boolean;
  error: unknown;
  onRaise: (body: OpenRemakeAlert) => void;
}

/** A person's own finding that something has to be made again, beside what the checks find. */
export function RaiseAlert({ view, pending, error, onRaise }: Props) {
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  return (
    <details className="sheet sheet-pad details no-print">
      <summary>{words.raise}</summary>
      <div className="stack-tight">
        <Textarea
          label={words.raiseReason}
          required
          maxLength={500}
          value={reason}
          error={tried && reason.trim() === '' ? words.reasonMissing : null}
          onChange={(event) => {
            setReason(event.currentTarget.value);
          }}
        />
        <Refusal error={error} />
        <div>
          <Button
            variant="default"
            loading={pending}
            onClick={() => {
              setTried(true);
              if (reason.trim())
                onRaise({ caseId: view.caseId, stage: view.code, trigger: 'clinical-finding', reason: reason.trim() });
            }}
          >
            {words.raiseGo}
          </Button>
        </div>
      </div>
    </details>
  );
}
