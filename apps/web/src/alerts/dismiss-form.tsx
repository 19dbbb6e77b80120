import { Button, Textarea } from '@mantine/core';
import type { DismissAlert } from '@archwright/contracts';
import { useState } from 'react';
import { alertWords as words } from '../words/chair.js';

/** Dismissing needs a reason; it stays on the record. */
export function DismissForm({ pending, onDismiss }: { pending: boolean; onDismiss: (body: DismissAlert) => void }) {
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  return (
    <details className="sheet sheet-pad details no-print">
      <summary>{words.dismiss}</summary>
      <div className="stack-tight">
        <Textarea
          label={words.dismissReason}
          required
          maxLength={500}
          value={reason}
          error={tried && reason.trim() === '' ? words.reasonMissing : null}
          onChange={(event) => {
            setReason(event.currentTarget.value);
          }}
        />
        <div>
          <Button
            variant="default"
            loading={pending}
            onClick={() => {
              setTried(true);
              if (reason.trim()) onDismiss({ reason: reason.trim() });
            }}
          >
            {words.dismissGo}
          </Button>
        </div>
      </div>
    </details>
  );
}
