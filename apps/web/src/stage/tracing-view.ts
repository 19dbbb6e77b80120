import type { TracingGiven, TracingView } from '@archwright/contracts';
import type { TracingEntry } from '@archwright/measures';
import type { DrawnAttempt } from '../tracing-pad/attempts-view.js';
import type { DrawnPoint, Evaluator } from '../tracing-pad/drawn-tracing.js';
import { stageWords } from '../words/chair.js';
import { frameWords } from '../words/frame.js';
import { readDimension } from './centric-view.js';
import { readClosures, readNumbers, TRACING_NUMBERS, type NumberName } from './finding-numbers.js';

export const TRACING_CHOICES = {
  stylusOn: ['upper', 'lower'],
  view: ['as-worn', 'mirrored'],
  posture: ['upright', 'reclined', 'supine'],
  apex: ['single', 'none', 'double'],
  form: ['', 'typical', 'flat', 'asymmetric', 'rounded', 'miniature', 'dorsally-extended', 'interrupted'],
} as const;

export const TRACING_TICKS = ['basesMoved', 'contact', 'pain', 'verticalDimensionChangedAfter'] as const;

const TRACING_NAMES = Object.keys(TRACING_NUMBERS) as NumberName[];
type TickName = (typeof TRACING_TICKS)[number];

/** One attempt as typed. */
export type TracingDraft = {
  stylusOn: TracingGiven['stylusOn'];
  view: TracingGiven['view'];
  posture: TracingGiven['posture'];
  /** Of an attempt that is drawn: its findings are computed. Null where they are typed. */
  points: DrawnPoint[] | null;
  apex: NonNullable<TracingGiven['apex']>;
  form: '' | NonNullable<TracingGiven['form']>;
  dimensionMm: string;
  landmarks: string;
} & Record<NumberName, string> &
  Record<TickName, boolean>;

/** A new attempt starts from the conditions of the one before: they seldom change within a visit. */
export const nextTracing = (last: TracingDraft | undefined): TracingDraft => ({
  stylusOn: last?.stylusOn ?? 'upper',
  view: last?.view ?? 'as-worn',
  posture: last?.posture ?? 'upright',
  points: null,
  apex: 'single',
  form: '',
  dimensionMm: last?.dimensionMm ?? '',
  landmarks: last?.landmarks ?? '',
  closureCount: '',
  closureRmsMm: '',
  closureMaxPairMm: '',
  roundingRadiusMm: '',
  armRmsMm: '',
  asymmetryDeg: '',
  dorsalExtensionMm: '',
  offsetMm: '',
  basesMoved: false,
  contact: false,
  pain: false,
  verticalDimensionChangedAfter: false,
});

/** The same, to be drawn. */
export const nextDrawing = (last: TracingDraft | undefined): TracingDraft => ({ ...nextTracing(last), points: [] });

/** What the comparison shows of an attempt that is not saved; nothing of one whose findings are typed. */
export const drawnOf = ({ stylusOn, view, points }: TracingDraft, index: number): DrawnAttempt[] =>
  points === null ? [] : [{ number: index + 1, stylusOn, view, points }];

/** The conditions of a saved attempt, for the next one to start from. */
export const conditionsOf = (entry: TracingView): TracingDraft => ({
  ...nextTracing(undefined),
  stylusOn: entry.stylusOn,
  view: entry.view,
  posture: entry.posture,
  dimensionMm: String(entry.occlusalVerticalDimension?.valueMm ?? ''),
  landmarks: entry.occlusalVerticalDimension?.landmarks ?? '',
});

/** A saved attempt in one line: what was seen, then what was measured. It stays as it was recorded. */
export function tracingInWords(entry: TracingView): string {
  const { tracing: names, tracingChoices: choices, mm } = stageWords;
  const said = (choice: string): string => choices[choice] ?? choice;
  const { occlusalVerticalDimension: dimension, closures } = entry;
  return [
    `${names.apex} ${said(entry.apex)}`,
    entry.form ? `${names.form} ${said(entry.form)}` : '',
    ...TRACING_TICKS.filter((tick) => entry[tick] === true).map((tick) => names[tick]),
    dimension ? stageWords.tracedAt(dimension.valueMm) : '',
    closures ? stageWords.closed(closures.count, closures.rmsMm) : '',
    entry.offsetMm === undefined ? '' : `${names.offsetMm} ${mm(entry.offsetMm)}`,
  ]
    .filter(Boolean)
    .join(' · ');
}

/** What is said of an attempt whether it is drawn or typed. */
function readCircumstances(draft: TracingDraft, at: string, errors: Record<string, string>): TracingGiven {
  const { stylusOn, view, posture, basesMoved, contact, pain, verticalDimensionChangedAfter } = draft;
  const dimension = readDimension(draft, at, errors);
  return {
    stylusOn,
    view,
    posture,
    basesMoved,
    contact,
    pain,
    verticalDimensionChangedAfter,
    ...(dimension ? { occlusalVerticalDimension: dimension } : {}),
  };
}

/** An attempt whose points make no evaluation is not saved: the pad says why. */
function readDrawn(
  points: DrawnPoint[],
  circumstances: TracingGiven,
  at: string,
  errors: Record<string, string>,
  evaluator: Evaluator | null,
): TracingGiven[] {
  const evaluated = evaluator?.evaluateDrawn(points, circumstances);
  if (evaluated !== undefined && 'evaluation' in evaluated) return [{ ...circumstances, points }];
  errors[`${at}|points`] = evaluated?.problem ?? frameWords.loading(stageWords.evaluator);
  return [];
}

/** A tracing as the checks judge it; nothing of one that says nothing yet. */
export function entryOf(given: TracingGiven, evaluator: Evaluator | null): TracingEntry[] {
  if (given.points !== undefined) return evaluator?.entryOfDrawn(given) ?? [];
  const { apex, ...circumstances } = given;
  return apex === undefined ? [] : [{ ...circumstances, apex }];
}

/**
 * @param evaluator reads a drawing; null while it is being fetched
 * @returns the attempt as it would be saved, with the refusals added to `errors`
 */
export function readTracing(
  draft: TracingDraft,
  at: string,
  errors: Record<string, string>,
  evaluator: Evaluator | null,
): TracingGiven[] {
  const circumstances = readCircumstances(draft, at, errors);
  if (draft.points !== null) return readDrawn(draft.points, circumstances, at, errors, evaluator);
  const numbers = readNumbers(draft, TRACING_NAMES, at, errors);
  const closures = readClosures(numbers, at, errors);
  const { apex, form } = draft;
  const { roundingRadiusMm, armRmsMm, asymmetryDeg, dorsalExtensionMm, offsetMm } = numbers;
  const known = Object.fromEntries(
    Object.entries({ roundingRadiusMm, armRmsMm, asymmetryDeg, dorsalExtensionMm, offsetMm, closures }).filter(
      ([, value]) => value !== undefined,
    ),
  );
  return [
    {
      ...circumstances,
      apex,
      ...(form ? { form } : {}),
      ...known,
    },
  ];
}
