import type { RecordCapture, StageView, VerdictView } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import {
  checkReading,
  derivedValues,
  evaluateStage,
  milestoneKindsOf,
  valueInWords,
  type Reading,
} from '@archwright/measures';
import type { Tone } from '../look/marks.js';
import { entryOf } from '../tracing-pad/drawn-tracing.js';

/** What a check says, whether the server said it or the browser while something is being typed. */
export type Finding = Omit<VerdictView, 'at'>;

export interface Findings {
  /** Failed first, then cautions, then passed. */
  findings: Finding[];
  derived: StageView['derived'];
  /** True while something typed is not saved: nobody but this screen has judged it yet. */
  isLive: boolean;
}

export const TONE: Record<Finding['verdict'], Tone> = { pass: 'go', caution: 'caution', fail: 'stop' };

const ORDER: readonly Finding['verdict'][] = ['fail', 'caution', 'pass'];

const worstFirst = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort((a, b) => ORDER.indexOf(a.verdict) - ORDER.indexOf(b.verdict));

export const savedFindings = (view: StageView): Findings => ({
  findings: worstFirst(view.verdicts),
  derived: view.derived,
  isLive: false,
});

/**
 * The same rules as on the server, over what is recorded and what is typed. A box that is not filled in properly yet says
 * nothing here: the box itself says what it would accept.
 */
export function liveFindings(view: StageView, body: RecordCapture): Findings {
  const typed = new Set(body.readings.map(subjectOf));
  const kept = view.readings.filter((reading) => !typed.has(subjectOf(reading)));
  const readings = [...kept, ...body.readings].map(plain).filter(isAccepted);
  const verdicts = evaluateStage({
    readings,
    facts: {
      milestones: view.milestones.flatMap((milestone) => milestoneKindsOf(milestone)),
      arches: view.arches,
      tracings: [...view.tracings, ...body.tracings.flatMap(entryOf)],
      otherCentricRelation: [...view.otherCentricRelation, ...body.otherCentricRelation],
    },
    overlay: view.overlay,
  });
  const findings = verdicts.map((verdict): Finding => {
    const { rule, ruleVersion, reason, limit, source, standing, action, cautionText } = verdict;
    const common = { rule, ruleVersion, reason, limit, source, standing, action, verdict: verdict.verdict };
    return { ...common, value: valueInWords(verdict), caution: cautionText === '' ? null : cautionText };
  });
  return { findings: worstFirst(findings), derived: derivedValues(readings), isLive: true };
}

const subjectOf = ({ code, arch, side, region }: RecordCapture['readings'][number]): string =>
  [code, arch ?? '', side ?? '', region ?? ''].join('|');

function plain({ code, value, unit, arch, side, region, method }: RecordCapture['readings'][number]): Reading {
  return {
    code,
    value,
    ...(unit === undefined ? {} : { unit }),
    ...(arch === undefined ? {} : { arch }),
    ...(side === undefined ? {} : { side }),
    ...(region === undefined ? {} : { region }),
    ...(method === undefined ? {} : { method }),
  };
}

function isAccepted(reading: Reading): boolean {
  try {
    checkReading(reading);
    return true;
  } catch (error) {
    if (error instanceof DomainError) return false;
    throw error;
  }
}
