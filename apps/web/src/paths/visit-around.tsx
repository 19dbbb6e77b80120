import type { PathGate } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import type { PartEditing } from './editing.js';
import { LoopStart } from './loop-start.js';
import { AddPart, PartLinks, PartSection } from './part-section.js';
import { withGateBefore, withLagBetween, withObjectMadeAt } from './path-change.js';
import type { PartRef } from './path-parts.js';
import { withStepAfter } from './step-shape.js';

interface Props {
  of: PartEditing;
  code: string;
}

const refs = (kind: PartRef['kind'], parts: readonly { code: string }[]): PartRef[] =>
  parts.map(({ code }) => ({ kind, code }));

/** Parts that hang on a visit, each a way there, and what can be hung on it. */
export function VisitAround({ of: { editing }, code }: Props) {
  const { path, workCentres } = editing;
  const next = path.visits[path.visits.findIndex((visit) => visit.code === code) + 1];
  const start = { title: words.start.step, workCentre: workCentres[0]?.value ?? '' };
  const withStep = start.workCentre === '' ? null : withStepAfter(path, code, start);
  const phases = path.labPhases.filter(({ after }) => after === code);
  const waits = path.lags.filter(({ from, to }) => from === code || to === code);
  return (
    <>
      <Gates editing={editing} before={{ kind: 'visit', code }} title={words.belongs.gates} add={words.add.gate} />
      <Gates
        editing={editing}
        before={{ kind: 'prescription', code }}
        title={words.belongs.prescriptionGates}
        add={words.add.prescriptionGate}
      />
      <PartSection title={words.titled(words.belongs.after, phases.flatMap(({ steps }) => steps).length)}>
        <PartLinks
          editing={editing}
          parts={phases.flatMap((phase) => [{ kind: 'phase', code: phase.code }, ...refs('step', phase.steps)])}
        />
        {withStep === null ? null : (
          <AddPart
            label={words.add.step}
            onAdd={() => {
              editing.change(withStep.path);
              editing.choose({ kind: 'step', code: withStep.code });
            }}
          />
        )}
      </PartSection>
      <PartSection title={words.titled(words.belongs.waits, waits.length)}>
        <PartLinks editing={editing} parts={refs('lag', waits)} />
        {next === undefined ? null : (
          <AddPart
            label={words.add.lag}
            onAdd={() => {
              const added = withLagBetween(path, [code, next.code], words.start.lag);
              editing.change(added.path);
              editing.choose({ kind: 'lag', code: added.code });
            }}
          />
        )}
      </PartSection>
      <MadeAndFound editing={editing} code={code} />
    </>
  );
}

interface GatesProps {
  editing: PartEditing['editing'];
  before: PathGate['before'];
  title: string;
  add: string;
}

/** The gates that stand before something. */
export function Gates({ editing, before, title, add }: GatesProps) {
  const { path } = editing;
  const gates = path.gates.filter((gate) => gate.before.kind === before.kind && gate.before.code === before.code);
  return (
    <PartSection title={words.titled(title, gates.length)} startsOpen={before.kind !== 'prescription'}>
      <PartLinks editing={editing} parts={refs('gate', gates)} />
      <AddPart
        label={add}
        onAdd={() => {
          const added = withGateBefore(path, before, words.start.gate);
          editing.change(added.path);
          editing.choose({ kind: 'gate', code: added.code });
        }}
      />
    </PartSection>
  );
}

/** What is made at a visit or a step, and the ways back that begin there. */
export function MadeAndFound({ editing, code }: { editing: PartEditing['editing']; code: string }) {
  const { path } = editing;
  const loops = path.loops.filter(({ foundAt }) => foundAt.includes(code));
  const objects = path.objects.filter(({ madeAt }) => madeAt === code);
  return (
    <>
      <PartSection title={words.titled(words.belongs.loops, loops.length)}>
        <PartLinks editing={editing} parts={refs('loop', loops)} />
        <LoopStart editing={editing} at={code} />
      </PartSection>
      <PartSection title={words.titled(words.belongs.objects, objects.length)}>
        <PartLinks editing={editing} parts={refs('object', objects)} />
        <AddPart
          label={words.add.object}
          onAdd={() => {
            const added = withObjectMadeAt(path, code, words.start.object);
            editing.change(added.path);
            editing.choose({ kind: 'object', code: added.code });
          }}
        />
      </PartSection>
    </>
  );
}
