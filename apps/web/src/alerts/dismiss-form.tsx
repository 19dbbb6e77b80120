import type { DismissAlert } from '@archwright/contracts';
import { TextForm } from '../drafts/text-form.js';
import type { Sending } from '../drafts/use-fields-form.js';
import { alertWords as words } from '../words/chair.js';

interface Props {
  alertId: string;
  /** What was refused is said at the head of the page. */
  dismiss: Sending<DismissAlert>;
}

/** Dismissing needs a reason; it stays on the record. */
export function DismissForm({ alertId, dismiss }: Props) {
  return (
    <details className="sheet sheet-pad details no-print">
      <summary>{words.dismiss}</summary>
      <TextForm
        draftKey={`dismiss.${alertId}`}
        label={words.dismissReason}
        missing={words.reasonMissing}
        path="reason"
        go={words.dismissGo}
        send={{ ...dismiss, mutateAsync: (reason) => dismiss.mutateAsync({ reason }) }}
        isRefusedElsewhere
      />
    </details>
  );
}
