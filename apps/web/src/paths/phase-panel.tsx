import type { LabPhase } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import { choicesOf } from './choices.js';
import type { PartEditing, PathEditing } from './editing.js';
import { ChoiceField, FieldError, NumberField } from './part-fields.js';
import { AddPart, PartLinks } from './part-section.js';
import { withPhase, withTurnaround } from './path-change.js';
import { visitChoices } from './path-parts.js';
import { withoutPhase, withStepAfter } from './step-shape.js';
import { TakeOut } from './take-out.js';

/** A stretch of laboratory work between two visits. */
export function PhasePanel({ editing, phase }: { editing: PathEditing; phase: LabPhase }) {
  const { code } = phase;
  const { path } = editing;
  const of: PartEditing = { editing, part: { kind: 'phase', code } };
  const from = path.visits.findIndex((visit) => visit.code === phase.after);
  return (
    <>
      <ChoiceField
        of={of}
        field="before"
        label={words.fields.before}
        value={phase.before}
        choices={visitChoices(path).slice(from + 1)}
        put={(before) => withPhase(code, { before })}
      />
      <ChoiceField
        of={of}
        field="outward"
        label={words.fields.outward}
        value={phase.outward}
        choices={choicesOf(words.outward)}
        put={(outward) => withPhase(code, { outward: outward === 'file' ? 'file' : 'courier' })}
      />
      <fieldset className="stack-tight">
        <legend>{words.fields.turnaround}</legend>
        <div className="row path-numbers">
          {(['usualMinDays', 'usualMaxDays', 'rushDays'] as const).map((field) => (
            <NumberField
              key={field}
              of={of}
              field={`turnaround.${field}`}
              label={words.fields[field]}
              value={phase.turnaround[field]}
              put={(value) => withTurnaround(code, { [field]: value })}
            />
          ))}
        </div>
      </fieldset>
      <fieldset className="stack-tight">
        <legend>{words.belongs.steps}</legend>
        <FieldError of={of} field="steps" />
        <PartLinks editing={editing} parts={phase.steps.map((step) => ({ kind: 'step', code: step.code }))} />
        <AddPart
          label={words.add.firstStep}
          onAdd={() => {
            const start = { title: words.start.step, workCentre: phase.steps[0]?.workCentre ?? '' };
            const added = withStepAfter(path, phase.after, start);
            if (added === null) return;
            editing.change(added.path);
            editing.choose({ kind: 'step', code: added.code });
          }}
        />
      </fieldset>
      <TakeOut editing={editing} next={withoutPhase(path, code)} label={words.takeOut.phase} />
    </>
  );
}
