import { Button } from '@mantine/core';
import type { StageView, VisitAction } from '@archwright/contracts';
import { Tag } from '../look/marks.js';
import { Refusal } from '../look/notice.js';
import { dateAndTime } from '../time/wording.js';
import { stageWords } from '../words/chair.js';
import { visitSteps } from './visit-steps.js';

const words = stageWords.visit;

interface Props {
  view: StageView;
  today: string;
  /** The action that is on its way, if any. */
  pending: VisitAction['action'] | null;
  error: unknown;
  onAct: (action: VisitAction['action']) => void;
}

/** The visit around the stage: when and where, and the next thing that happens to it. */
export function VisitBar({ view, today, pending, error, onAct }: Props) {
  const { visit, zone } = view;
  if (visit === null) return <p className="soft">{words.none}</p>;
  const when = dateAndTime(visit.startsAt, zone, today);
  return (
    <div className="stack-tight">
      <div className="row">
        <span>{words.when(when, visit.clinicName, visit.clinicianName)}</span>
        <Tag tone={visit.state === 'in-progress' ? 'accent' : 'plain'}>{words.state[visit.state]}</Tag>
        {visitSteps(view).map((action, index) => (
          <Button
            key={action}
            variant={index === 0 ? 'filled' : 'default'}
            loading={pending === action}
            onClick={() => {
              onAct(action);
            }}
          >
            {words[action]}
          </Button>
        ))}
      </div>
      <Refusal error={error} />
    </div>
  );
}
