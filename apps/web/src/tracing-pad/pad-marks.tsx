import type { Evaluation, NoApex } from '@archwright/tracing';
import { armEnds } from '@archwright/tracing';
import type { DrawnPoint, Seen } from './drawn-tracing.js';
import type { Extent, Place } from './pad-frame.js';

/** Lines every millimetre, stronger every five. */
export function Grid({ left, right, bottom, top }: Extent) {
  const whole = (from: number, to: number): number[] =>
    Array.from({ length: Math.floor(to) - Math.ceil(from) + 1 }, (_, index) => Math.ceil(from) + index);
  const weight = (mm: number): string => (mm % 5 === 0 ? 'pad-line-five' : 'pad-line');
  return (
    <g aria-hidden="true">
      {whole(left, right).map((x) => (
        <line key={`x ${String(x)}`} className={weight(x)} x1={x} x2={x} y1={-top} y2={-bottom} />
      ))}
      {whole(bottom, top).map((y) => (
        <line key={`y ${String(y)}`} className={weight(y)} x1={left} x2={right} y1={-y} y2={-y} />
      ))}
    </g>
  );
}

/** Phases are told apart by shape as well as by colour. */
export function PointMark({ phase, x, y }: DrawnPoint) {
  switch (phase) {
    case 'right':
      return <circle className="pad-right" cx={x} cy={-y} r={0.14} />;
    case 'left':
      return <rect className="pad-left" x={x - 0.13} y={-y - 0.13} width={0.26} height={0.26} />;
    case 'protrusive':
      return <path className="pad-protrusive" d={`M${String(x - 0.16)} ${String(-y)}h0.32m-0.16 -0.16v0.32`} />;
    case 'closure':
      return <circle className="pad-closure" cx={x} cy={-y} r={0.2} />;
  }
}

/** Arms, apex with its uncertainty, and the region of the closures' mean, over the points as they were drawn. */
export function Fit({ evaluation, seen }: { evaluation: Evaluation | NoApex; seen: Seen }) {
  if (evaluation.apex === null) return null;
  const { apex, apexUncertaintyMm, closures } = evaluation;
  // Evaluations speak of the plate as worn; the screen shows it as it was looked at.
  const side = seen.view === 'mirrored' ? -1 : 1;
  const shown = ({ x, y }: Place): Place => ({ x: side * x, y: -y });
  const ends = armEnds(evaluation, seen.stylusOn);
  const at = shown(apex);
  const mean = closures?.ellipses == null ? null : { ...closures.ellipses, at: shown(closures.mean) };
  return (
    <g aria-hidden="true" className="pad-fit">
      {[ends.right, ends.left].map(shown).map((end, index) => (
        <line key={index === 0 ? 'right' : 'left'} x1={at.x} y1={at.y} x2={end.x} y2={end.y} />
      ))}
      <circle cx={at.x} cy={at.y} r={apexUncertaintyMm} />
      <path d={`M${String(at.x - 0.5)} ${String(at.y)}h1m-0.5 -0.5v1`} />
      {mean === null ? null : (
        <ellipse
          cx={mean.at.x}
          cy={mean.at.y}
          rx={mean.ofMean.semiMajor}
          ry={mean.ofMean.semiMinor}
          transform={`rotate(${String(-side * mean.axisDeg)} ${String(mean.at.x)} ${String(mean.at.y)})`}
        />
      )}
    </g>
  );
}
