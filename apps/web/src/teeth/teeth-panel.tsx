import type { RecordCapture, StageView } from '@archwright/contracts';
import { hasStatus } from '../api/errors.js';
import { FirstWait } from '../look/screen.js';
import { Refusal } from '../look/notice.js';
import { teethWords as words } from '../words/teeth.js';
import { TeethForm } from './teeth-form.js';
import './teeth.css';
import { useTeeth } from './use-teeth.js';

interface Props {
  view: StageView;
  body: RecordCapture;
  today: string;
}

/** Which teeth: what the face suggests, what was measured, what the patient wishes, and who decided. */
export function TeethPanel({ view, body, today }: Props) {
  const { choice, keep } = useTeeth(view.id);
  return (
    <details className="sheet sheet-pad details">
      <summary>{words.title}</summary>
      {choice.data ? (
        <TeethForm
          view={view}
          body={body}
          today={today}
          choice={choice.data}
          pending={keep.isPending}
          error={keep.error}
          onKeep={(chosen, done) => {
            const outdated = (error: Error) => {
              if (hasStatus(error, 412)) void choice.refetch();
            };
            keep.mutate({ body: chosen, version: choice.data.version }, { onSuccess: done, onError: outdated });
          }}
        />
      ) : choice.error ? (
        <Refusal error={choice.error} onRetry={() => void choice.refetch()} />
      ) : (
        <FirstWait what={words.title} />
      )}
    </details>
  );
}
