import type { OpenRemakeAlert, RemakeAlertView, StageView } from '@archwright/contracts';
import { TextForm } from '../drafts/text-form.js';
import type { Sending } from '../drafts/use-fields-form.js';
import { stageWords as words } from '../words/chair.js';

interface Props {
  view: Pick<StageView, 'id' | 'caseId' | 'code'>;
  raise: Sending<OpenRemakeAlert, RemakeAlertView>;
  onRaised: (alert: RemakeAlertView) => void;
}

/** A person's own finding that something has to be made again, beside what the checks find. */
export function RaiseAlert({ view: { id, caseId, code }, raise, onRaised }: Props) {
  return (
    <details className="sheet sheet-pad details no-print">
      <summary>{words.raise}</summary>
      <TextForm
        draftKey={`raise.${id}`}
        label={words.raiseReason}
        missing={words.reasonMissing}
        path="reason"
        go={words.raiseGo}
        send={{
          ...raise,
          mutateAsync: (reason) => raise.mutateAsync({ caseId, stage: code, trigger: 'clinical-finding', reason }),
        }}
        onSent={onRaised}
      />
    </details>
  );
}
