import { teethWords as words } from '../words/teeth.js';
import type { TargetView } from './teeth-view.js';

const WIDTH = 640;
const LEFT = 8;
const ROW = 26;
const HEAD = 28;
const AXIS = 30;

/** One band for each kind of tooth width: a bar from end to end for a relation, a diamond for a measured tooth. */
export function RangesPicture({ targets }: { targets: readonly TargetView[] }) {
  let y = 0;
  const bands = targets.map((target) => {
    const top = y;
    y += HEAD + (target.ranges.length + target.marks.length) * ROW + AXIS;
    return { target, top };
  });
  return (
    <svg viewBox={`0 0 ${String(WIDTH)} ${String(y)}`} role="img" aria-label={words.picture} className="teeth-picture">
      {bands.map(({ target, top }) => (
        <g key={target.target} transform={`translate(0 ${String(top)})`}>
          <Band target={target} />
        </g>
      ))}
    </svg>
  );
}

function Band({ target: { title, from, to, ranges, marks } }: { target: TargetView }) {
  const at = (mm: number): number => LEFT + ((mm - from) / (to - from)) * (WIDTH - 2 * LEFT);
  const bottom = HEAD + (ranges.length + marks.length) * ROW;
  return (
    <>
      <text x={LEFT} y={16} className="teeth-title">
        {title}
      </text>
      {ranges.map(({ key, name, lowMm, highMm }, index) => {
        const middle = HEAD + index * ROW + ROW - 8;
        return (
          <g key={key}>
            <path
              className="teeth-range"
              d={`M${String(at(lowMm))} ${String(middle)}H${String(at(highMm))}M${String(at(lowMm))} ${String(middle - 4)}v8M${String(at(highMm))} ${String(middle - 4)}v8`}
            />
            <text x={at(lowMm)} y={middle - 6}>
              {name}
            </text>
          </g>
        );
      })}
      {marks.map(({ key, name, valueMm }, index) => {
        const middle = HEAD + (ranges.length + index) * ROW + ROW - 8;
        const x = at(valueMm);
        const isRight = x > WIDTH / 2;
        return (
          <g key={key}>
            <path className="teeth-mark" d={`M${String(x)} ${String(middle - 6)}l6 6l-6 6l-6 -6Z`} />
            <text x={isRight ? x - 12 : x + 12} y={middle + 4} textAnchor={isRight ? 'end' : 'start'}>
              {name}
            </text>
          </g>
        );
      })}
      <path className="teeth-axis" d={`M${String(LEFT)} ${String(bottom + 4)}H${String(WIDTH - LEFT)}`} />
      <text x={LEFT} y={bottom + 18}>
        {words.scaleEnd(from)}
      </text>
      <text x={WIDTH - LEFT} y={bottom + 18} textAnchor="end">
        {words.scaleEnd(to)}
      </text>
    </>
  );
}
