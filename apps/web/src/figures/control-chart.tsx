import { drawChart, type ChartView } from './chart-geometry.js';

const DIAMOND = 7;

/**
 * A control chart: the average solid, limits dashed, points as discs, those outside as diamonds. The table beside it says
 * the same, so the picture has one name and no parts for those who can't see it.
 */
export function ControlChart({ label, view }: { label: string; view: ChartView }) {
  const { width, height, points, upper, lower, centreY, left, right, xLabels, yLabels } = drawChart(view);
  const line = points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');
  return (
    <svg className="control-chart" viewBox={`0 0 ${String(width)} ${String(height)}`} role="img" aria-label={label}>
      {yLabels.map(({ y, text }) => (
        <g key={text}>
          <path className="chart-rule" d={`M${String(left)} ${y.toFixed(1)}H${String(right)}`} />
          <text x={left - 6} y={y + 4} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      {xLabels.map(({ x, text }) => (
        <text key={text} x={x} y={height - 8} textAnchor="middle">
          {text}
        </text>
      ))}
      {centreY === null ? null : (
        <path className="chart-centre" d={`M${String(left)} ${centreY.toFixed(1)}H${String(right)}`} />
      )}
      <path className="chart-limit" d={upper} />
      <path className="chart-limit" d={lower} />
      <polyline className="chart-line" points={line} />
      {points.map(({ x, y, isOutside }, index) =>
        isOutside ? (
          <path
            key={index}
            className="chart-outside"
            d={`M${x.toFixed(1)} ${(y - DIAMOND).toFixed(1)}l${String(DIAMOND)} ${String(DIAMOND)}l-${String(DIAMOND)} ${String(DIAMOND)}l-${String(DIAMOND)} -${String(DIAMOND)}z`}
          />
        ) : (
          <circle key={index} className="chart-point" cx={x} cy={y} r={4} />
        ),
      )}
    </svg>
  );
}
