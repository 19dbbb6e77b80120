import { useEffect, useRef } from 'react';
import { editorWords as words } from '../words/path-editor.js';
import type { PathEditing } from './editing.js';
import { GatePanel } from './gate-panel.js';
import { HeadPanel } from './head-panel.js';
import { LagPanel } from './lag-panel.js';
import { LoopPanel } from './loop-panel.js';
import { ObjectPanel } from './object-panel.js';
import { FieldError } from './part-fields.js';
import { partName, type PartRef } from './path-parts.js';
import { PhasePanel } from './phase-panel.js';
import { StepPanel } from './step-panel.js';
import { VisitPanel } from './visit-panel.js';

interface Props {
  editing: PathEditing;
  part: PartRef;
  /** Grows whenever somebody goes to the part; 0 while nobody has. */
  visits: number;
}

/** The part that is open, with its fields. Whoever goes there comes to what is wrong in it, or to its heading. */
export function PartPanel({ editing, part, visits }: Props) {
  const panel = useRef<HTMLElement>(null);
  useEffect(() => {
    if (visits === 0) return;
    const wrong = panel.current?.querySelector<HTMLElement>('[aria-invalid="true"]');
    const target = wrong ?? panel.current?.querySelector<HTMLElement>('h3');
    target?.focus();
  }, [visits]);
  return (
    <section ref={panel} className="sheet sheet-pad stack-tight path-panel" aria-labelledby="part">
      <h3 id="part" tabIndex={-1}>
        {part.kind === 'path' ? words.kinds.path : words.chosen(words.kinds[part.kind], partName(editing.path, part))}
      </h3>
      {part.kind === 'path' ? null : <FieldError of={{ editing, part }} field="" />}
      <FieldsOfPart editing={editing} part={part} />
    </section>
  );
}

function FieldsOfPart({ editing, part: { kind, code } }: Omit<Props, 'visits'>) {
  const { path } = editing;
  const named = <Part extends { code: string }>(parts: readonly Part[]) => parts.find((each) => each.code === code);
  const [visit, lag, gate] = [named(path.visits), named(path.lags), named(path.gates)];
  const [phase, loop, object] = [named(path.labPhases), named(path.loops), named(path.objects)];
  const step = named(path.labPhases.flatMap(({ steps }) => steps));
  if (kind === 'visit' && visit) return <VisitPanel editing={editing} visit={visit} />;
  if (kind === 'step' && step) return <StepPanel editing={editing} step={step} />;
  if (kind === 'phase' && phase) return <PhasePanel editing={editing} phase={phase} />;
  if (kind === 'lag' && lag) return <LagPanel editing={editing} lag={lag} />;
  if (kind === 'gate' && gate) return <GatePanel editing={editing} gate={gate} />;
  if (kind === 'loop' && loop) return <LoopPanel editing={editing} loop={loop} />;
  if (kind === 'object' && object) return <ObjectPanel editing={editing} object={object} />;
  return <HeadPanel editing={editing} />;
}
