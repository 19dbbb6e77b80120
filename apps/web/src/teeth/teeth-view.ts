import type { ChooseTeeth, StageView } from '@archwright/contracts';
import {
  measurementByCode,
  summariseReadings,
  toothSelection,
  withEarlier,
  TOOTH_TARGETS,
  type FaceWidths,
  type ToothEstimate,
  type ToothTarget,
} from '@archwright/measures';
import { judgedNow, type Judged } from '../stage/finding-view.js';
import { locale } from '../words/language.js';
import { teethWords as words } from '../words/teeth.js';

type Measured = ChooseTeeth['measured'][number];

/** One kind of tooth width: its scale, what relations suggest and what was measured. */
export interface TargetView {
  target: ToothTarget;
  title: string;
  /** Ends of the scale, mm. */
  from: number;
  to: number;
  ranges: { key: string; name: string; lowMm: number; highMm: number }[];
  marks: { key: string; name: string; valueMm: number }[];
}

export interface TeethView {
  targets: TargetView[];
  rows: { id: string; relation: string; cells: string[] }[];
  note: string | null;
}

const WIDTHS = {
  interalarMm: 'interalar-width',
  innerCanthalMm: 'inner-canthal-width',
  bizygomaticMm: 'bizygomatic-width',
  interpupillaryMm: 'interpupillary-distance',
} as const satisfies Record<keyof FaceWidths, string>;

const inTenths = new Intl.NumberFormat(locale, { minimumFractionDigits: 1, maximumFractionDigits: 1 });
const tenths = (mm: number): string => inTenths.format(mm);

/** What the face suggests, from what is recorded, typed or was measured at an earlier visit, beside measured teeth. */
export function teethOf(view: StageView, judged: Judged, measured: readonly Measured[]): TeethView {
  const face = faceOf(view, judged);
  const estimates = Object.keys(face).length === 0 ? null : toothSelection(face, [], view.sex);
  return {
    targets: TOOTH_TARGETS.map((target) => targetView(target, estimates?.estimates ?? [], measured)).filter(
      ({ ranges, marks }) => ranges.length + marks.length > 0,
    ),
    rows: (estimates?.estimates ?? []).map(rowOf),
    note: estimates?.note ?? null,
  };
}

function faceOf(view: StageView, judged: Judged): FaceWidths {
  const { readings, facts } = judgedNow(view, judged);
  const known = withEarlier(readings, facts.earlier);
  const entries = Object.entries(WIDTHS).flatMap(([field, code]) => {
    const own = known.filter((reading) => reading.code === code);
    return own.length === 0 ? [] : [[field, summariseReadings(measurementByCode(code).name, own).median]];
  });
  return Object.fromEntries(entries) as FaceWidths;
}

function targetView(
  target: ToothTarget,
  estimates: readonly ToothEstimate[],
  measured: readonly Measured[],
): TargetView {
  const ranges = estimates.flatMap(({ target: of, relation, formula, lowMm, highMm }) =>
    of === target && lowMm !== null && highMm !== null ? [{ key: relation, name: formula, lowMm, highMm }] : [],
  );
  const marks = measured
    .filter((each) => each.target === target)
    .map(({ object, valueMm }, index) => ({
      key: `${object} ${String(index)}`,
      name: words.measuredName(words.targets[target], words.objects[object], tenths(valueMm)),
      valueMm,
    }));
  const ends = [...ranges.flatMap(({ lowMm, highMm }) => [lowMm, highMm]), ...marks.map(({ valueMm }) => valueMm)];
  return {
    target,
    title: words.targets[target],
    from: Math.floor(Math.min(...ends) - 0.5),
    to: Math.ceil(Math.max(...ends) + 0.5),
    ranges,
    marks,
  };
}

const rowOf = (estimate: ToothEstimate): TeethView['rows'][number] => ({
  id: estimate.relation,
  relation: estimate.formula,
  cells: [
    words.targets[estimate.target],
    estimate.lowMm === null || estimate.highMm === null
      ? words.noNumbers
      : words.range(tenths(estimate.lowMm), tenths(estimate.highMm)),
    words.from(measurementByCode(estimate.from).name, tenths(estimate.fromMm)),
    estimate.disagreements.join(' '),
    words.source(estimate.source, estimate.standing),
  ],
});
