import type { PathLabStep } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import { choicesOf } from './choices.js';
import { hasError, type PartEditing, type PathEditing } from './editing.js';
import { ChoiceField, NumberField, TextField } from './part-fields.js';
import { AddPart, PartLinks, PartSection } from './part-section.js';
import { withLagBetween, withStep } from './path-change.js';
import { ArrowsIn, ArrowsOut } from './step-arrows.js';
import { SegmentLines } from './step-segments.js';
import { phaseAround, withoutStep, withStepAfter } from './step-shape.js';
import { TakeOut } from './take-out.js';
import { Gates, MadeAndFound } from './visit-around.js';

/** Everything that a path says of one step in the laboratory. */
export function StepPanel({ editing, step }: { editing: PathEditing; step: PathLabStep }) {
  const { code } = step;
  const { path } = editing;
  const of: PartEditing = { editing, part: { kind: 'step', code } };
  const phase = phaseAround(path, code);
  if (phase === undefined) return null;
  const waits = path.lags.filter(({ from }) => from === code);
  return (
    <>
      <PartLinks editing={editing} parts={[{ kind: 'phase', code: phase.code }]} />
      <TextField
        of={of}
        field="title"
        label={words.fields.title}
        value={step.title}
        put={(title) => withStep(code, { title })}
      />
      <ChoiceField
        of={of}
        field="workCentre"
        label={words.fields.workCentre}
        value={step.workCentre}
        choices={editing.workCentres}
        put={(workCentre) => withStep(code, { workCentre })}
      />
      <PartSection
        title={words.titled(words.fields.segments, step.segments.length)}
        startsOpen
        hasFault={hasError(of, ['segments'])}
      >
        <SegmentLines of={of} step={step} />
      </PartSection>
      <PartSection
        title={words.titled(words.belongs.arrowsIn, step.after.length)}
        startsOpen
        hasFault={hasError(of, ['after'])}
      >
        <ArrowsIn of={of} phase={phase} step={step} />
      </PartSection>
      <PartSection title={words.belongs.arrowsOut}>
        <ArrowsOut of={of} phase={phase} step={step} />
        <PartLinks editing={editing} parts={waits.map((lag) => ({ kind: 'lag', code: lag.code }))} />
        <AddPart
          label={words.add.lag}
          onAdd={() => {
            const added = withLagBetween(path, [code, phase.before], words.start.lag);
            editing.change(added.path);
            editing.choose({ kind: 'lag', code: added.code });
          }}
        />
        <AddPart
          label={words.add.step}
          onAdd={() => {
            const added = withStepAfter(path, code, { title: words.start.step, workCentre: step.workCentre });
            if (added === null) return;
            editing.change(added.path);
            editing.choose({ kind: 'step', code: added.code });
          }}
        />
      </PartSection>
      <Gates editing={editing} before={{ kind: 'lab-step', code }} title={words.belongs.gates} add={words.add.gate} />
      <MadeAndFound editing={editing} code={code} />
      <PartSection title={words.moreOfStep} hasFault={hasError(of, ['singleArchFactor'])}>
        <ChoiceField
          of={of}
          field="batch"
          label={words.fields.batch}
          value={step.batch ?? ''}
          choices={choicesOf(words.batches)}
          hasNone
          put={(batch) => withStep(code, { batch: batch === '' ? null : (batch as keyof typeof words.batches) })}
        />
        <ChoiceField
          of={of}
          field="pointOfNoReturn"
          label={words.fields.pointOfNoReturn}
          value={step.pointOfNoReturn ?? ''}
          choices={choicesOf(words.noReturn)}
          hasNone
          put={(kind) =>
            withStep(code, { pointOfNoReturn: kind === '' ? null : (kind as keyof typeof words.noReturn) })
          }
        />
        <NumberField
          of={of}
          field="singleArchFactor"
          label={words.fields.singleArchFactor}
          value={step.singleArchFactor}
          put={(singleArchFactor) => withStep(code, { singleArchFactor })}
        />
      </PartSection>
      <TakeOut editing={editing} next={withoutStep(path, code)} label={words.takeOut.step} />
    </>
  );
}
