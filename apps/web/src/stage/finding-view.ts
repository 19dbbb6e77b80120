import type { RecordCapture, StageView, VerdictView } from '@archwright/contracts';
import { DomainError } from '@archwright/kernel';
import {
  checkReading,
  derivedValues,
  evaluateStage,
  milestoneKindsOf,
  subjectOf,
  valueInWords,
  withEarlier,
  type Reading,
} from '@archwright/measures';
import { PARTS_IN } from '@archwright/protocol';
import type { Tone } from '../look/marks.js';
import { delivered } from '../words/delivered.js';
import type { ReadDraft } from './capture-view.js';

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

/** What is typed, with its tracings as the checks judge them. */
export type Judged = Pick<ReadDraft, 'body' | 'entries'>;

/**
 * The same rules as on the server, over what is recorded and what is typed. A box that is not filled in properly yet says
 * nothing here: the box itself says what it would accept.
 */
export function liveFindings(view: StageView, judged: Judged): Findings {
  const { readings, facts } = judgedNow(view, judged);
  const verdicts = evaluateStage({
    readings,
    facts,
    overlay: view.overlay,
  });
  const findings = verdicts.map((verdict): Finding => {
    const { rule, ruleVersion, reason, limit, source, standing, action, cautionText } = verdict;
    const common = { rule, ruleVersion, reason, limit, source, standing, action, verdict: verdict.verdict };
    return { ...common, value: valueInWords(verdict), caution: cautionText === '' ? null : delivered(cautionText) };
  });
  return { findings: worstFirst(findings), derived: derivedValues(withEarlier(readings, facts.earlier)), isLive: true };
}

/** What the rules judge: recorded, with what is typed over it, and what earlier visits left. */
export function judgedNow(view: StageView, { body, entries }: Judged) {
  const typed = new Set(body.readings.map((reading) => subjectOf(plain(reading))));
  const kept = view.readings.map(plain).filter((reading) => !typed.has(subjectOf(reading)));
  return {
    readings: [...kept, ...body.readings.map(plain)].filter(isAccepted),
    facts: {
      milestones: view.milestones.flatMap((milestone) => milestoneKindsOf(milestone)),
      arches: view.arches,
      person: view.sex === null ? {} : { sex: view.sex },
      earlier: view.earlier.map(plain),
      tracings: [...view.tracings, ...entries],
      tracingPlanned: partsIn(view, body) > 0,
      otherCentricRelation: [...view.otherCentricRelation, ...body.otherCentricRelation],
    },
  };
}

function partsIn(view: StageView, { checklist }: RecordCapture): number {
  const typed = checklist[PARTS_IN];
  return typeof typed === 'number' ? typed : (view.checklist.find(({ code }) => code === PARTS_IN)?.count ?? 0);
}

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
