import type { StageView } from '@archwright/contracts';
import { NotYet } from '../look/not-yet.js';
import type { Judged } from '../stage/finding-view.js';
import { teethWords as words } from '../words/teeth.js';
import { TeethForm } from './teeth-form.js';
import './teeth.css';
import { useTeeth } from './use-teeth.js';

export interface Props {
  view: StageView;
  judged: Judged;
  today: string;
}

/** Which teeth: what the face suggests, what was measured, what the patient wishes, and who decided. */
export function ToothChoice({ view, judged, today }: Props) {
  const { choice, keep } = useTeeth(view.id);
  if (!choice.data) {
    return <NotYet asked={choice} what={words.title} />;
  }
  const { version } = choice.data;
  return (
    <TeethForm
      view={view}
      judged={judged}
      today={today}
      choice={choice.data}
      pending={keep.isPending}
      error={keep.error}
      onKeep={(chosen, onSaved) => {
        keep.mutate({ body: chosen, version, onSaved });
      }}
    />
  );
}
