import type { TracingView } from '@archwright/contracts';
import { compareTracings, drawEvaluation, type Evaluation, type NoApex } from '@archwright/tracing';
import { padWords as words } from '../words/tracing-pad.js';
import { evaluateDrawn, type DrawnPoint, type Seen } from './drawn-tracing.js';

/** An attempt that is drawn and not saved yet. */
export interface DrawnAttempt extends Seen {
  /** Among those that are not saved, from 1. */
  readonly number: number;
  readonly points: readonly DrawnPoint[];
}

/** The attempts of a sitting: those that are saved, and those that are drawn and not saved yet. */
export interface Attempts {
  readonly stageId: string;
  readonly saved: readonly TracingView[];
  readonly drawn: readonly DrawnAttempt[];
}

/** One attempt of the sitting as the comparison shows it. */
export interface AttemptRow {
  key: string;
  name: string;
  /** Address of its drawing; null where findings were typed or the points make no evaluation yet. */
  drawing: string | null;
  form: string;
  angle: string;
  apex: string;
  closures: string;
}

export interface ComparedAttempts {
  rows: AttemptRow[];
  /** How far they agree; null below two with an apex. */
  spread: string | null;
}

/** What the spread is made from: of a saved attempt the apex and its angle are known, of a drawn one everything. */
type Located = Pick<Evaluation, 'apex' | 'apexAngleDeg'> | Pick<NoApex, 'apex'>;

/** Attempts that are saved, then those that are drawn and not saved yet. Typed ones are listed without a drawing. */
export function compareAttempts({ stageId, saved, drawn }: Attempts): ComparedAttempts {
  const fresh = drawn.map(freshRow);
  const located = [
    ...saved.flatMap((tracing) => (tracing.isDrawn ? [locatedOf(tracing)] : [])),
    ...fresh.flatMap(({ evaluation }) => (evaluation === null ? [] : [evaluation])),
  ];
  return {
    rows: [...saved.map((tracing) => savedRow(stageId, tracing)), ...fresh.map(({ row }) => row)],
    spread: spreadOf(located),
  };
}

const locatedOf = ({ evaluation }: TracingView): Located =>
  evaluation === null
    ? { apex: null }
    : { apex: { x: evaluation.apex.xMm, y: evaluation.apex.yMm }, apexAngleDeg: evaluation.apexAngleDeg };

function spreadOf(located: readonly Located[]): string | null {
  const compared = compareTracings(located);
  if (compared === null) return null;
  const { n, apexAngleDeg, apices } = compared;
  const [least, most] = [apexAngleDeg.least.toFixed(1), apexAngleDeg.most.toFixed(1)];
  return words.spread(n, least, most, apices.rmsMm.toFixed(2), apices.maxPairMm.toFixed(2));
}

function savedRow(stageId: string, tracing: TracingView): AttemptRow {
  const { number, isDrawn, form, apex, closures, evaluation } = tracing;
  return {
    key: `saved ${String(number)}`,
    name: words.attempt(number, true),
    drawing: isDrawn ? `/api/v1/stages/${stageId}/tracings/${String(number)}/drawing` : null,
    form: apex === 'none' ? words.none : words.forms[form ?? apex],
    angle: evaluation === null ? (isDrawn ? '' : words.typed) : words.degrees(evaluation.apexAngleDeg.toFixed(1)),
    apex: evaluation === null ? '' : words.apexAt(evaluation.apex.xMm, evaluation.apex.yMm),
    closures: closures === undefined ? '' : closuresInWords(closures.count, closures.rmsMm),
  };
}

function freshRow({ number, points, stylusOn, view }: DrawnAttempt): {
  row: AttemptRow;
  evaluation: Evaluation | NoApex | null;
} {
  const evaluated = evaluateDrawn(points, { stylusOn, view });
  const blank = { key: `fresh ${String(number)}`, name: words.attempt(number, false), drawing: null };
  if ('problem' in evaluated) {
    return { row: { ...blank, form: '', angle: '', apex: '', closures: '' }, evaluation: null };
  }
  const { evaluation } = evaluated;
  const { closures } = evaluation;
  const svg = drawEvaluation({ points, stylusOn, view }, evaluation);
  return {
    evaluation,
    row: {
      ...blank,
      drawing: `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`,
      form: evaluation.apex === null ? words.none : words.forms[evaluation.form],
      angle: evaluation.apex === null ? '' : words.degrees(evaluation.apexAngleDeg.toFixed(1)),
      apex: evaluation.apex === null ? '' : words.apexAt(evaluation.apex.x, evaluation.apex.y),
      closures: closures === null ? '' : closuresInWords(closures.n, closures.rmsMm),
    },
  };
}

const closuresInWords = (n: number, rmsMm: number): string => words.closed(n, words.mm(rmsMm.toFixed(2)));
