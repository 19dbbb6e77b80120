import type { Evaluation, NoApex } from '@archwright/tracing';
import { padWords as words } from '../words/tracing-pad.js';
import type { Evaluated } from './drawn-tracing.js';

/** What the drawing says, in one sentence. */
export function saidOf(evaluated: Evaluated): string {
  if ('problem' in evaluated) return evaluated.problem;
  const { evaluation } = evaluated;
  if (evaluation.apex === null) return words.noApex;
  const doubts = evaluation.doubts.map((doubt) => words.doubt[doubt]);
  return [words.said(evaluation.form, evaluation.apexAngleDeg), ...doubts].join(' ');
}

const mm = (value: number): string => words.mm(value.toFixed(2));
const degrees = (value: number): string => words.degrees(value.toFixed(1));

/** Findings with their units, those that are not known left out. */
export function findingsInWords(evaluation: Evaluation | NoApex): { name: string; value: string }[] {
  const { closures } = evaluation;
  const closed =
    closures === null ? [] : [{ name: words.closures, value: words.closed(closures.n, mm(closures.rmsMm)) }];
  if (evaluation.apex === null) return closed;
  const { arms, apexUncertaintyMm, asymmetryDeg, offsetMm, protrusiveDeviationDeg, roundingRadiusMm } = evaluation;
  const known = (name: string, value: number | null, said: (value: number) => string) =>
    value === null ? [] : [{ name, value: said(value) }];
  return [
    ...known(words.apexKnown, apexUncertaintyMm, mm),
    { name: words.rightArm, value: words.arm(degrees(arms.right.angleDeg), mm(arms.right.lengthMm)) },
    { name: words.leftArm, value: words.arm(degrees(arms.left.angleDeg), mm(arms.left.lengthMm)) },
    ...known(words.asymmetry, asymmetryDeg, degrees),
    ...known(words.protrusive, protrusiveDeviationDeg, degrees),
    ...known(words.rounding, roundingRadiusMm, mm),
    ...closed,
    ...known(words.offset, offsetMm, mm),
  ];
}
