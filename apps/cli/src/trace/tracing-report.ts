import { judgeTracing, JUDGEMENT_NOTE } from '@archwright/measures';
import {
  toTracingEntry,
  type ArmEvaluation,
  type Closures,
  type Evaluation,
  type NoApex,
  type Point,
} from '@archwright/tracing';

/** Ten thousandths: as many digits as a caller may compare, none that the drawing made up. */
const rounded = (value: number | null): number | null => (value === null ? null : Math.round(value * 1e4) / 1e4);

const armReport = ({ angleDeg, lengthMm, rmsMm }: ArmEvaluation) => ({
  angleDeg: rounded(angleDeg),
  lengthMm: rounded(lengthMm),
  rmsMm: rounded(rmsMm),
});

const closureReport = ({ n, mean, rmsMm, maxPairMm, ellipses }: Closures) => ({
  n,
  meanXMm: rounded(mean.x),
  meanYMm: rounded(mean.y),
  rmsMm: rounded(rmsMm),
  maxPairMm: rounded(maxPairMm),
  ellipse:
    ellipses === null
      ? null
      : {
          semiMajorMm: rounded(ellipses.ofMean.semiMajor),
          semiMinorMm: rounded(ellipses.ofMean.semiMinor),
          axisDeg: rounded(ellipses.axisDeg),
        },
});

interface Origin {
  /** From the plate as worn to the picture as given; null for digitised points. */
  readonly toPicture: ((point: Point) => Point) | null;
  readonly posture: string | null;
}

const rounded2 = (value: number): number => Math.round(value * 100) / 100;

/** What the command prints with `--json`; lengths in mm, angles in degrees, x to the patient's right, y forward. */
export function tracingReport(
  evaluation: Evaluation | NoApex,
  { toPicture, posture }: Origin = { toPicture: null, posture: null },
) {
  const circumstances = { basesMoved: false, contact: false, pain: false };
  const { verdict, reasons } = judgeTracing(toTracingEntry(evaluation, circumstances));
  const closure = evaluation.closures === null ? null : closureReport(evaluation.closures);
  if (evaluation.apex === null) {
    return { apex: null, closure, form: null, verdict, reasons: [...reasons], posture, note: JUDGEMENT_NOTE };
  }
  const inPicture = toPicture?.(evaluation.apex);
  return {
    apex: {
      xMm: rounded(evaluation.apex.x),
      yMm: rounded(evaluation.apex.y),
      uncertaintyMm: rounded(evaluation.apexUncertaintyMm),
    },
    ...(inPicture === undefined ? {} : { apexPx: { x: rounded2(inPicture.x), y: rounded2(inPicture.y) } }),
    apexAngleDeg: rounded(evaluation.apexAngleDeg),
    arms: { right: armReport(evaluation.arms.right), left: armReport(evaluation.arms.left) },
    asymmetryDeg: rounded(evaluation.asymmetryDeg),
    protrusiveDeviationDeg: rounded(evaluation.protrusiveDeviationDeg),
    roundingRadiusMm: rounded(evaluation.roundingRadiusMm),
    closure,
    offsetMm: rounded(evaluation.offsetMm),
    form: evaluation.form,
    verdict,
    reasons: [...reasons],
    posture,
    note: JUDGEMENT_NOTE,
  };
}

export type TracingReport = ReturnType<typeof tracingReport>;

const shown = (value: number | null | undefined, unit: string): string =>
  value === null || value === undefined ? 'not known' : `${value.toFixed(2)} ${unit}`;

/** The same in lines to read. */
export function tracingLines(report: TracingReport): string[] {
  const verdict = `verdict           ${report.verdict}${report.reasons.length > 0 ? `: ${report.reasons.join('; ')}` : ''}`;
  if (report.apex === null) return ['apex              none: the arms do not make one', verdict, report.note];
  const { apex, arms, closure } = report;
  return [
    `apex              ${shown(apex.xMm, 'mm')} right, ${shown(apex.yMm, 'mm')} forward, known to ${shown(apex.uncertaintyMm, 'mm')}`,
    `apex angle        ${shown(report.apexAngleDeg, 'degrees')}`,
    `right arm         ${shown(arms.right.angleDeg, 'degrees')}, ${shown(arms.right.lengthMm, 'mm')} long, scatter ${shown(arms.right.rmsMm, 'mm')}`,
    `left arm          ${shown(arms.left.angleDeg, 'degrees')}, ${shown(arms.left.lengthMm, 'mm')} long, scatter ${shown(arms.left.rmsMm, 'mm')}`,
    `asymmetry         ${shown(report.asymmetryDeg, 'degrees')}`,
    `protrusive path   ${shown(report.protrusiveDeviationDeg, 'degrees')} off the bisector, positive to the patient's right`,
    `rounding radius   ${shown(report.roundingRadiusMm, 'mm')}`,
    closure === null
      ? 'closures          none'
      : `closures          ${String(closure.n)}, scatter ${shown(closure.rmsMm, 'mm')}, widest pair ${shown(closure.maxPairMm, 'mm')}, mean ${shown(report.offsetMm, 'mm')} off the apex`,
    `form              ${report.form}`,
    verdict,
    report.note,
  ];
}
