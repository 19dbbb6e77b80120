import { TextForm } from '../drafts/text-form.js';
import { NotYet } from '../look/not-yet.js';
import { photographWords as words } from '../words/photographs.js';
import { KeepForm } from './keep-form.js';
import { PhotographFigure } from './photograph-figure.js';
import { usePhotographs } from './use-photographs.js';

export interface Props {
  stageId: string;
  zone: string;
  today: string;
}

/** The photographs of a visit, and one more; one that should not be there is taken away with a reason. */
export function VisitPhotographs({ stageId, zone, today }: Props) {
  const { kept, keep, remove } = usePhotographs(stageId);
  if (!kept.data) return <NotYet asked={kept} what={words.title} />;
  const { items } = kept.data;
  return (
    <div className="stack">
      {items.length === 0 ? <p className="soft">{words.none}</p> : null}
      <div className="photographs">
        {items.map((photograph) => (
          <PhotographFigure key={photograph.id} photograph={photograph} zone={zone} today={today}>
            <details className="details no-print">
              <summary>{words.remove(photograph.caption)}</summary>
              <TextForm
                draftKey={`photograph.remove.${photograph.id}`}
                label={words.reason}
                missing={words.need.reason}
                path="reason"
                go={words.removeGo}
                send={{
                  error: remove.variables?.id === photograph.id ? remove.error : null,
                  isPending: remove.isPending && remove.variables.id === photograph.id,
                  reset: remove.reset,
                  mutateAsync: (reason) => remove.mutateAsync({ id: photograph.id, reason }),
                }}
              />
            </details>
          </PhotographFigure>
        ))}
      </div>
      <KeepForm stageId={stageId} keep={keep} />
    </div>
  );
}
