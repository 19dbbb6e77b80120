import type { LabPhase, PathLabStep, StepPredecessor } from '@archwright/protocol';
import { delivered } from '../words/delivered.js';
import { editorWords as words } from '../words/path-editor.js';
import { errorOf, type PartEditing } from './editing.js';
import { ChoiceField, FieldError, LimitField, TextField } from './part-fields.js';
import { PartList, withoutAt } from './part-list.js';
import { PartLinks } from './part-section.js';
import { withArrow, withStep } from './path-change.js';
import { partName, stepChoices, workName } from './path-parts.js';
import { followers } from './step-shape.js';

interface Props {
  of: PartEditing;
  phase: LabPhase;
  step: PathLabStep;
}

/** What a step follows, each with its waits. */
export function ArrowsIn({ of, phase, step }: Props) {
  const { editing } = of;
  const { path } = editing;
  const before = [
    { value: phase.after, label: partName(path, { kind: 'visit', code: phase.after }) },
    ...stepChoices(phase).filter(({ value }) => value !== step.code),
  ];
  const free = before.find(({ value }) => step.after.every(({ code }) => code !== value));
  const apply = (after: StepPredecessor[]): void => {
    editing.change(withStep(step.code, { after })(path));
  };
  return (
    <PartList
      label={words.belongs.arrowsIn}
      names={step.after.map(({ code }) => workName(path, code))}
      error={errorOf(of, 'after')}
      onRemove={(index) => {
        apply(withoutAt(step.after, index));
      }}
      {...(free === undefined
        ? {}
        : {
            add: {
              label: words.add.arrow,
              onAdd: () => {
                apply([...step.after, { code: free.value, lag: null, min: null, max: null }]);
              },
            },
          })}
    >
      {(index) => {
        const arrow = step.after[index];
        if (arrow === undefined) return null;
        const field = `after.${String(index)}`;
        return (
          <>
            <ChoiceField
              of={of}
              field={field}
              label={words.list.numbered(words.fields.after, index + 1)}
              value={arrow.code}
              choices={before}
              put={(code) => withArrow(step.code, index, { code })}
            />
            <ArrowLimits of={of} step={step} index={index} />
            <TextField
              of={of}
              field={`${field}.lag`}
              label={words.fields.lag}
              hint={words.hints.slug}
              value={arrow.lag ?? ''}
              put={(lag) => withArrow(step.code, index, { lag: lag === '' ? null : lag })}
            />
          </>
        );
      }}
    </PartList>
  );
}

/** What follows a step: the same arrows, changed from their other end. */
export function ArrowsOut({ of, phase, step }: Props) {
  const arrows = followers(phase, step.code);
  if (arrows.length === 0) return <p className="small soft">{words.noArrows}</p>;
  return (
    <ul className="path-lines" aria-label={words.belongs.arrowsOut}>
      {arrows.map(({ step: next, index }) => (
        <li key={next.code} className="stack-tight">
          <PartLinks editing={of.editing} parts={[{ kind: 'step', code: next.code }]} />
          <ArrowLimits
            of={{ editing: of.editing, part: { kind: 'step', code: next.code } }}
            step={next}
            index={index}
            towards={delivered(next.title)}
          />
        </li>
      ))}
    </ul>
  );
}

interface LimitsProps {
  of: PartEditing;
  step: PathLabStep;
  index: number;
  /** What the arrow leads to, where several arrows stand beside each other. */
  towards?: string;
}

function ArrowLimits({ of, step, index, towards }: LimitsProps) {
  const arrow = step.after[index];
  if (arrow === undefined) return null;
  const name = towards ?? workName(of.editing.path, arrow.code);
  return (
    <>
      {(['min', 'max'] as const).map((bound) => (
        <LimitField
          key={bound}
          of={of}
          field={`after.${String(index)}.${bound}`}
          label={words.limit.of(words.fields[bound], name)}
          value={arrow[bound]}
          put={(limit) => withArrow(step.code, index, { [bound]: limit })}
        />
      ))}
      <FieldError of={of} field={`after.${String(index)}.limits`} />
    </>
  );
}
