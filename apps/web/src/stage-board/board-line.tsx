import { TimeDrawing } from '../look/time-drawing.js';
import { LINE_WIDTH, type LineMark } from './stage-board-view.js';

function MarkShape({ mark }: { mark: LineMark }) {
  const { x, y, kind, state } = mark;
  if (kind === 'alert' || state === 'needs-person') {
    return (
      <>
        <path d={`M${String(x)} ${String(y - 11)}l11 11l-11 11l-11 -11Z`} className="shape-person" />
        <path
          d={`M${String(x)} ${String(y - 5)}v6M${String(x)} ${String(y + 3.4)}v1.6`}
          className="shape-person-mark"
        />
      </>
    );
  }
  if (kind === 'lab') {
    return <rect x={x - 13} y={y - 6} width={26} height={12} rx={3} className={`shape-${state}`} />;
  }
  return <circle cx={x} cy={y} r={state === 'now' ? 8.5 : 6.5} className={`shape-${state}`} />;
}

/** The case in its order, without dates. The card's own words say the same. */
export function BoardLine({ marks }: { marks: LineMark[] }) {
  const lastDone = marks.findLastIndex(
    (mark) => mark.state === 'done' || mark.state === 'now' || mark.kind === 'alert',
  );
  const points = (list: LineMark[]): string => list.map((mark) => `${String(mark.x)},${String(mark.y)}`).join(' ');
  return (
    <TimeDrawing
      across={LINE_WIDTH}
      viewBox={`0 0 ${String(LINE_WIDTH)} 54`}
      className="case-line board-line"
      aria-hidden="true"
    >
      <polyline points={points(marks.slice(0, lastDone + 1))} className="track" />
      <polyline points={points(marks.slice(Math.max(0, lastDone)))} className="track track-held" />
      {marks.map((mark) => (
        <MarkShape key={mark.key} mark={mark} />
      ))}
    </TimeDrawing>
  );
}
