import { percent } from '../words/figures.js';
import { locale } from '../words/language.js';

export interface ChartPoint {
  readonly label: string;
  readonly value: number;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly isOutside: boolean;
}

export interface ChartView {
  readonly points: readonly ChartPoint[];
  readonly centre: number | null;
  /** Values from 0 to 1, said in percent. */
  readonly isShare: boolean;
}

const WIDTH = 720;
const HEIGHT = 200;
const LEFT = 48;
const RIGHT = 12;
const TOP = 12;
const BOTTOM = 28;
const MOST_LABELS = 9;

const tick = new Intl.NumberFormat(locale, { maximumFractionDigits: 1, useGrouping: false });

export interface DrawnChart {
  readonly width: number;
  readonly height: number;
  readonly points: readonly { x: number; y: number; isOutside: boolean }[];
  /** Paths of the limits as steps, one level for each point; empty without limits. */
  readonly upper: string;
  readonly lower: string;
  readonly centreY: number | null;
  readonly left: number;
  readonly right: number;
  readonly xLabels: readonly { x: number; text: string }[];
  readonly yLabels: readonly { y: number; text: string }[];
}

/** Where everything of a control chart is drawn, in units of its own frame. */
export function drawChart({ points, centre, isShare }: ChartView): DrawnChart {
  const highest = Math.max(
    ...points.flatMap(({ value, upper }) => [value, upper ?? value]),
    centre ?? 0,
    isShare ? 0.05 : 1,
  );
  const top = isShare ? Math.min(1, highest * 1.1) : niceTop(highest);
  const step = (WIDTH - LEFT - RIGHT) / Math.max(1, points.length);
  const xOf = (index: number) => LEFT + step * (index + 0.5);
  const yOf = (value: number) => TOP + (HEIGHT - TOP - BOTTOM) * (1 - value / top);
  const every = Math.ceil(points.length / MOST_LABELS);
  const steps = (level: (point: ChartPoint) => number | null): string => {
    const parts = points.map((point, index) => {
      const value = level(point);
      if (value === null) return '';
      const from = LEFT + step * index;
      return `${index === 0 ? 'M' : 'L'}${round(from)} ${round(yOf(value))}H${round(from + step)}`;
    });
    return parts.join('');
  };
  return {
    width: WIDTH,
    height: HEIGHT,
    points: points.map(({ value, isOutside }, index) => ({ x: xOf(index), y: yOf(value), isOutside })),
    upper: steps(({ upper }) => upper),
    lower: steps(({ lower }) => lower),
    centreY: centre === null ? null : yOf(centre),
    left: LEFT,
    right: WIDTH - RIGHT,
    xLabels: points.flatMap(({ label }, index) => (index % every === 0 ? [{ x: xOf(index), text: label }] : [])),
    yLabels: [0, top / 2, top].map((value) => ({
      y: yOf(value),
      text: isShare ? percent(value) : tick.format(value),
    })),
  };
}

const round = (number: number): string => number.toFixed(1);

/** The next of 1, 2, 4, 5 or 10 times a power of ten that holds a value. */
function niceTop(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  return ([1, 2, 4, 5, 10].find((factor) => factor * power >= value) ?? 10) * power;
}
