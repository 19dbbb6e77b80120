import type { CentricRelationMethod } from '../measurement.js';
import { projectDefault } from '../standing.js';
import { requireSameMethod } from '../readings/summary.js';
import type { LimitCode } from './limits.js';
import { checkSettings, type CheckSettings } from './settings.js';
import type { VerdictKind } from './verdict.js';
import { cautions, fails, passes, type CheckRule, type Outcome } from './rule.js';
import type {
  CentricRelationRecord,
  ClosureStatistics,
  Stage,
  StageFacts,
  TracingDoubt,
  TracingEntry,
} from './stage.js';
import { jawRelationWayBack } from './vertical-rules.js';

/** Values are recorded to a tenth of a millimetre; half of that is no change. */
const SAME_DIMENSION_MM = 0.05;

const BLOCKING = 'one apex, bases at rest, no contact, no pain, unchanged vertical dimension';

/** What makes a tracing useless whatever its numbers are; empty for a usable one. */
function tracingDefects(tracing: TracingEntry): readonly string[] {
  return [
    tracing.apex === 'none' ? 'no apex' : null,
    tracing.apex === 'double' ? 'double apex' : null,
    tracing.basesMoved ? 'the bases moved' : null,
    tracing.contact ? 'rims or bases touched' : null,
    tracing.pain ? 'pain' : null,
  ].filter((defect) => defect !== null);
}

/** True when the vertical dimension in force is no longer the one the record was made at. */
function isVoided(stage: Stage, record: TracingEntry | CentricRelationRecord): boolean {
  if (record.verticalDimensionChangedAfter === true) return true;
  const current = stage.summary('occlusal-vertical-dimension');
  const then = record.occlusalVerticalDimension;
  if (current === null || then === undefined) return false;
  requireSameMethod('Vertical dimension now and at the record', current.method, { landmarks: then.landmarks }, [
    'landmarks',
  ]);
  return Math.abs(current.median - then.valueMm) > SAME_DIMENSION_MM;
}

const DOUBTS: Readonly<Record<TracingDoubt, string>> = {
  'arms-swapped':
    'the right movement lies on the patient’s left: check the stated view and which jaw carried the stylus',
  turned: 'the arms do not lead forward: check which jaw carried the stylus, and which way up the plate was read',
};

type Settings = Pick<CheckSettings, 'limit'>;

function above(settings: Settings, code: LimitCode, value: number | undefined, what: string, unit: string): string[] {
  const limit = settings.limit(code).value;
  return value !== undefined && value > limit
    ? [`${what} ${String(value)} ${unit} (up to ${String(limit)} ${unit})`]
    : [];
}

/** Closures that lie further apart than unpublished limits, or are fewer, in words. */
function closureFindings(settings: Settings, closures: ClosureStatistics | undefined): readonly string[] {
  if (closures === undefined) return [];
  const { count, rmsMm, maxPairMm } = closures;
  const wanted = settings.limit('tracing-closures').value;
  return [
    ...above(settings, 'tracing-closure-rms-mm', rmsMm, 'closure scatter', 'mm'),
    ...above(settings, 'tracing-closure-pair-mm', maxPairMm, 'widest closure pair', 'mm'),
    ...(count < wanted ? [`${String(count)} closures (${String(wanted)} wanted)`] : []),
  ];
}

/** Numbers beyond unpublished limits, and what speaks against the stated stylus or view, in words. */
function softFindings(settings: Settings, tracing: TracingEntry): readonly string[] {
  const { closures, form } = tracing;
  return [
    ...(form === undefined || form === 'typical' ? [] : [`form ${form.replace('-', ' ')}`]),
    ...above(settings, 'tracing-rounding-mm', tracing.roundingRadiusMm, 'apex rounding', 'mm'),
    ...above(settings, 'tracing-arm-rms-mm', tracing.armRmsMm, 'arm scatter', 'mm'),
    ...above(settings, 'tracing-asymmetry-deg', tracing.asymmetryDeg, 'asymmetry', 'degrees'),
    ...above(settings, 'tracing-dorsal-extension-mm', tracing.dorsalExtensionMm, 'line behind the apex', 'mm'),
    ...closureFindings(settings, closures),
    ...above(settings, 'tracing-offset-mm', tracing.offsetMm, 'closure mean off the apex by', 'mm'),
    ...(tracing.doubts ?? []).map((doubt) => DOUBTS[doubt]),
  ];
}

/**
 * One tracing by itself, before it is saved with a visit: what makes it useless fails it; numbers beyond limits, all
 * of them unpublished project defaults, are cautions.
 */
export function judgeTracing(
  tracing: TracingEntry,
  settings: CheckSettings = checkSettings(),
): { readonly verdict: VerdictKind; readonly reasons: readonly string[] } {
  const defects = tracingDefects(tracing);
  if (defects.length > 0) return { verdict: 'fail', reasons: defects };
  const wanted = String(settings.limit('tracing-closures').value);
  const findings = [
    ...softFindings(settings, tracing),
    ...(tracing.closures === undefined ? [`no closures (${wanted} wanted beside a single tracing)`] : []),
  ];
  return { verdict: findings.length > 0 ? 'caution' : 'pass', reasons: findings };
}

function judgeLatest(stage: Stage, tracing: TracingEntry, failed: number): Outcome {
  const common = { value: failed, unit: 'count', limit: BLOCKING, measurement: 'centric-relation' };
  const defects = tracingDefects(tracing);
  if (defects.length > 0) {
    const allowed = stage.limit('failed-tracings').value;
    const said = `Tracing unusable: ${defects.join(', ')}. ${String(failed)} failed in this visit`;
    return failed >= allowed
      ? fails({
          ...common,
          reason: `${said}, ${String(allowed)} is the limit: rest 10 to 15 minutes, use another centric relation method, or book a new visit.`,
          action: 'return-to-stage',
          trigger: 'jaw-relation-not-recorded',
        })
      : fails({
          ...common,
          reason: `${said} of ${String(allowed)}: correct the cause and trace again.`,
          action: 'repeat',
        });
  }
  if (isVoided(stage, tracing)) return voided(stage, 'The tracing', 'Trace again');
  const soft = softFindings(stage, tracing);
  if (soft.length === 0)
    return passes({ ...common, reason: 'Tracing usable: one apex, no contact, no pain, bases at rest.' });
  return cautions({
    ...common,
    limit: 'project defaults, unpublished',
    reason: `Tracing usable with care: ${soft.join('; ')}. Repeat if closures do not agree.`,
    action: 'go-on',
  });
}

function voided(stage: Stage, what: string, again: string): Outcome {
  const way = stage.isAt('trial', 'placement', 'review') ? jawRelationWayBack(stage) : ({ action: 'repeat' } as const);
  return fails({
    value: stage.summary('occlusal-vertical-dimension')?.median ?? null,
    unit: 'mm',
    limit: 'made at the occlusal vertical dimension in force',
    measurement: 'centric-relation',
    reason: `${what} was made at another occlusal vertical dimension and is void. ${again} at the new one.`,
    ...way,
  });
}

/** Another method is an ordinary pass; closures that do not agree ask for a look, as beside a tracing. */
function judgeOther(stage: Stage, { method, closures }: CentricRelationRecord): Outcome {
  const common = { value: method, measurement: 'centric-relation' };
  const said = `Centric relation recorded by ${method.replaceAll('-', ' ')} in this visit`;
  const soft = closureFindings(stage, closures);
  if (soft.length === 0)
    return passes({ ...common, limit: 'a record at the vertical dimension in force', reason: `${said}.` });
  return cautions({
    ...common,
    limit: 'project defaults, unpublished',
    reason: `${said}, with care: ${soft.join('; ')}. Record again if closures do not agree.`,
    action: 'go-on',
  });
}

const centricRelation: CheckRule = {
  code: 'centric-relation-record',
  version: 3,
  name: 'Tracing or other centric relation record',
  milestones: ['jaw-relation', 'trial', 'placement'],
  source: projectDefault('project default; no published cut-off for an unusable tracing was found'),
  cautionText:
    'Needle raised only after seating; small movements first; no closing while talking; stop on pain. Support tracing with other methods: it is praised in practice and was the least repeatable of three in 14 dentate adults (Keshvad & Winstanley 2003).',
  evaluate(stage) {
    const { tracings = [], otherCentricRelation = [] } = stage.facts;
    const latest = tracings.at(-1);
    const failed = tracings.filter((tracing) => tracingDefects(tracing).length > 0).length;
    const traced = latest === undefined ? null : judgeLatest(stage, latest, failed);
    // Pain stops the visit whichever method follows.
    if (traced !== null && (traced.verdict !== 'fail' || latest?.pain === true)) return [traced];
    const valid = otherCentricRelation.filter((record) => !isVoided(stage, record)).at(-1);
    if (valid !== undefined) {
      return [judgeOther(stage, valid)];
    }
    if (traced !== null) return [traced];
    return otherCentricRelation.length > 0 ? [voided(stage, 'The centric relation record', 'Record again')] : [];
  },
};

/**
 * How centric relation was recorded in a visit: a gate that asks for it is met by any usable record. Whether the
 * vertical dimension still is the one it was made at is for the checks of the visit to say.
 *
 * @returns null when no usable record was made
 */
export function centricRelationInForce(
  facts: Pick<StageFacts, 'tracings' | 'otherCentricRelation'>,
): 'tracing' | CentricRelationMethod | null {
  const tracing = facts.tracings?.at(-1);
  if (tracing !== undefined && tracingDefects(tracing).length === 0) return 'tracing';
  return facts.otherCentricRelation?.at(-1)?.method ?? null;
}

const riskExplained: CheckRule = {
  code: 'tracing-risk-explained',
  version: 1,
  name: 'Injury risk of the tracing set explained',
  milestones: ['jaw-relation'],
  source: projectDefault('project rule: recorded before the set is mounted'),
  cautionText: 'Tongue, lip and cheek clear; no closing while talking; stop on pain; count parts in and out.',
  evaluate(stage) {
    const traced = (stage.facts.tracings ?? []).length > 0;
    if (!traced && stage.facts.tracingPlanned !== true) return [];
    const common = {
      value: stage.answer('tracing-risk-explained'),
      limit: 'explained and recorded',
      measurement: 'tracing-risk-explained',
    };
    if (common.value === true)
      return [passes({ ...common, reason: 'The injury risk of the tracing set was explained.' })];
    // Once traced it cannot be made undone; blocking would only invite a record dated back.
    return traced
      ? [
          cautions({
            ...common,
            reason: 'A tracing was made and no explanation of its injury risk is recorded.',
            action: 'go-on',
          }),
        ]
      : [
          fails({
            ...common,
            reason: 'Explain the injury risk of the tracing set and record it before mounting.',
            action: 'correct-in-chair',
          }),
        ];
  },
};

const impressionFirst: CheckRule = {
  code: 'impression-before-tracing',
  version: 1,
  name: 'Impression set and passed before the tracing',
  milestones: ['final-impression'],
  source: projectDefault('project rule for the combined visit'),
  cautionText: 'A tracing on an unset or failed impression is on a base that will be replaced.',
  evaluate(stage) {
    if ((stage.facts.tracings ?? []).length === 0) return [];
    return stage.facts.arches.flatMap((arch): Outcome[] => {
      const impression = stage.answer('impression-result', { arch });
      const common = {
        value: impression,
        limit: 'passed and re-seated before tracing',
        measurement: 'impression-result',
        arch,
      };
      if (impression !== 'passed' && impression !== 'small-void') {
        return [
          fails({
            ...common,
            reason: `The ${arch} impression is not recorded as passed, but a tracing was made on it. Pass the impression, re-seat and trace again.`,
            action: 'repeat',
          }),
        ];
      }
      return [passes({ ...common, reason: `The ${arch} impression passed before the tracing.` })];
    });
  },
};

export const TRACING_RULES: readonly CheckRule[] = [centricRelation, riskExplained, impressionFirst];
