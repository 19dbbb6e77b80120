import { DrawnText, TimeDrawing } from '../look/time-drawing.js';
import type { Axis } from './axis-view.js';
import { GUTTER_PX } from './axis-view.js';
import type { Bar, Disc, LineDrawing } from './line-view.js';

const diamond = (x: number, y: number, size: number): string =>
  `M${String(x)} ${String(y - size)}L${String(x + size)} ${String(y)}L${String(x)} ${String(y + size)}L${String(x - size)} ${String(y)}Z`;

function DiscShape({ disc }: { disc: Disc }) {
  const { x, y, state, firm } = disc;
  if (state === 'needs-person') {
    return (
      <>
        <path d={diamond(x, y, 12)} className="shape-person" />
        <path d={`M${String(x)} ${String(y - 5)}v6M${String(x)} ${String(y + 4)}v1.6`} className="shape-person-mark" />
      </>
    );
  }
  return (
    <circle
      cx={x}
      cy={y}
      r={state === 'now' ? 9 : 8}
      className={`shape-${state}`}
      strokeDasharray={firm ? undefined : '4 2.5'}
    />
  );
}

function BarShape({ bar }: { bar: Bar }) {
  return (
    <g>
      <title>{bar.title}</title>
      <rect
        x={bar.x}
        y={bar.y}
        width={bar.widthPx}
        height={bar.heightPx}
        rx={4}
        className={`bar bar-${String(bar.tone)} bar-${bar.state}`}
      />
      {bar.text ? (
        <DrawnText x={bar.x + 6} y={bar.y + 14} className={`bar-text bar-text-${String(bar.tone)}`}>
          {bar.text}
        </DrawnText>
      ) : null}
    </g>
  );
}

interface Props {
  axis: Axis;
  row: LineDrawing;
  levels: { clinic: string; lab: string };
  /** Drawn in grey: how it was before a change. */
  muted?: boolean;
}

/** The line as a picture. It is hidden from screen readers: every screen shows the same as a list. */
export function CaseLineDrawing({ axis, row, levels, muted = false }: Props) {
  const right = axis.widthPx - 8;
  return (
    <TimeDrawing
      across={axis.widthPx}
      width={axis.widthPx}
      height={row.heightPx}
      aria-hidden="true"
      className={muted ? 'case-line case-line-before' : 'case-line'}
    >
      {axis.weekends.map((weekend) => (
        <rect
          key={weekend.x}
          x={weekend.x}
          y={22}
          width={weekend.widthPx}
          height={row.heightPx - 24}
          className="weekend"
        />
      ))}
      {axis.ticks.map((tick) => (
        <g key={tick.x}>
          <line x1={tick.x} x2={tick.x} y1={22} y2={row.heightPx - 2} className="tick" />
          <DrawnText x={tick.x + 4} y={14} className="tick-text">
            {tick.label}
          </DrawnText>
        </g>
      ))}
      <DrawnText x={12} y={row.clinicY + 4} className="level-text">
        {levels.clinic}
      </DrawnText>
      <DrawnText x={12} y={row.labY + 4} className="level-text">
        {levels.lab}
      </DrawnText>
      <line x1={GUTTER_PX} x2={right} y1={row.clinicY} y2={row.clinicY} className="level" />
      <line x1={GUTTER_PX} x2={right} y1={row.labY} y2={row.labY} className="level" />
      {row.track.map((piece) => (
        <polyline key={piece.points} points={piece.points} className={piece.firm ? 'track' : 'track track-held'} />
      ))}
      {row.bars.map((bar) => (
        <BarShape key={`${bar.title} ${String(bar.x)} ${String(bar.y)}`} bar={bar} />
      ))}
      {row.discs.map((disc) => (
        <g key={`${disc.title} ${String(disc.x)}`}>
          <title>{disc.title}</title>
          {disc.label.y < row.clinicY - 24 || disc.label.x !== disc.x ? (
            <line x1={disc.x} x2={disc.label.x} y1={disc.y - 10} y2={disc.label.y + 3} className="leader" />
          ) : null}
          <DiscShape disc={disc} />
          <DrawnText x={disc.label.x} y={disc.label.y - 13} className="disc-date">
            {disc.label.date}
          </DrawnText>
          <DrawnText x={disc.label.x} y={disc.label.y} className="disc-time">
            {disc.label.time}
          </DrawnText>
          {disc.againstWish ? (
            <rect x={disc.label.x + 21} y={disc.label.y - 9.5} width={10} height={10} className="against-wish" />
          ) : null}
        </g>
      ))}
    </TimeDrawing>
  );
}
