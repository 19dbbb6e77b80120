import type { FiguresView, ShareFigure, UseFigure, ValueFigure } from '@archwright/contracts';
import { longDate, shortDate } from '../time/wording.js';
import { figureWords as words, percent } from '../words/figures.js';
import { locale } from '../words/language.js';
import type { ChartPoint, ChartView } from './chart-geometry.js';

export interface FigureView {
  readonly key: string;
  readonly title: string;
  /** What it comes to, and how far it can be relied on; null with nothing to show. */
  readonly sentence: string | null;
  readonly chart: ChartView;
  readonly columns: readonly string[];
  readonly rows: readonly { id: string; head: string; cells: readonly string[] }[];
}

const outsideOf = (points: readonly { isOutside: boolean }[]): number =>
  points.filter(({ isOutside }) => isOutside).length;

export function figuresSentence({ shares, values, sinceOn, today }: FiguresView): string {
  const figures = [...shares, ...values];
  if (!figures.some(({ standing }) => standing.kind === 'charted')) return words.tooLittle;
  const outside = figures.reduce((sum, { points }) => sum + outsideOf(points), 0);
  return words.sentence(outside, longDate(sinceOn, today));
}

const verdict = (isOutside: boolean): string => (isOutside ? words.outside : words.inside);

const monthName = new Intl.DateTimeFormat(locale, { month: 'long', year: 'numeric', timeZone: 'UTC' });
const monthTick = new Intl.DateTimeFormat(locale, { month: 'short', year: '2-digit', timeZone: 'UTC' });

export function shareView({ key, standing, centre, points }: ShareFigure): FigureView {
  const sum = (of: readonly number[]) => of.reduce((total, one) => total + one, 0);
  const events = sum(points.map((point) => point.events));
  const size = sum(points.map((point) => point.size));
  const reliance =
    standing.kind === 'too-few' ? words.standing['too-few-months'](standing.needed) : relianceOf(standing.kind, points);
  const named = points.map((point) => ({ ...point, at: Date.parse(`${point.monthOn}T00:00:00Z`) }));
  return {
    key,
    title: words.titles[key],
    sentence: points.length === 0 ? null : `${words.shareSentence(events, size, points.length)} ${reliance}`,
    chart: {
      centre,
      isShare: true,
      points: named.map(({ at, lower, upper, isOutside, ...point }): ChartPoint => ({
        label: monthTick.format(at),
        value: point.events / point.size,
        lower,
        upper,
        isOutside,
      })),
    },
    columns: Object.values({ ...words.shareColumns, size: words.per[key] }),
    rows: named.map(({ at, monthOn, lower, upper, isOutside, ...point }) => ({
      id: monthOn,
      head: monthName.format(at),
      cells: [
        String(point.events),
        String(point.size),
        percent(point.events / point.size),
        lower === null || upper === null ? '' : words.span(percent(lower), percent(upper)),
        standing.kind === 'charted' ? verdict(isOutside) : '',
      ],
    })),
  };
}

export function valueView(
  { key, unit, standing, centre, lower, upper, points }: ValueFigure,
  today: string,
): FigureView {
  const reliance =
    standing.kind === 'too-few' ? words.standing['too-few-cases'](standing.needed) : relianceOf(standing.kind, points);
  return {
    key,
    title: words.titles[key],
    sentence: centre === null ? null : `${words.valueSentence[unit](centre, points.length)} ${reliance}`,
    chart: {
      centre,
      isShare: false,
      points: points.map(({ caseNumber, value, isOutside }) => ({ label: caseNumber, value, lower, upper, isOutside })),
    },
    columns: Object.values(words.valueColumns),
    rows: points.map(({ caseId, caseNumber, on, value, isOutside }) => ({
      id: caseId,
      head: caseNumber,
      cells: [shortDate(on, today), words.values[unit](value), standing.kind === 'charted' ? verdict(isOutside) : ''],
    })),
  };
}

function relianceOf(kind: 'charted' | 'no-spread', points: readonly { isOutside: boolean }[]): string {
  return kind === 'no-spread' ? words.standing['no-spread'] : words.standing.charted(outsideOf(points));
}

export interface UseRow {
  readonly id: string;
  readonly name: string;
  readonly place: string;
  readonly booked: string;
  readonly open: string;
  readonly used: string;
}

/** Fullest first; what was not open at all has no share. */
export function usageGroups(rows: readonly UseFigure[]): { title: string; rows: UseRow[] }[] {
  const kinds = Object.entries(words.use.kinds) as [UseFigure['kind'], string][];
  const share = ({ bookedMinutes, openMinutes }: UseFigure) => (openMinutes === 0 ? -1 : bookedMinutes / openMinutes);
  return kinds.map(([kind, title]) => ({
    title,
    rows: rows
      .filter((row) => row.kind === kind)
      .sort((one, other) => share(other) - share(one))
      .map((row) => ({
        id: `${row.id} ${row.place}`,
        name: row.name,
        place: row.place,
        booked: words.use.hours(row.bookedMinutes / 60),
        open: words.use.hours(row.openMinutes / 60),
        used: row.openMinutes === 0 ? words.use.closed : percent(share(row)),
      })),
  }));
}
