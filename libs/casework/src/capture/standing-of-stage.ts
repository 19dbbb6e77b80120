import type { Filling, StageBoard, Told } from '@archwright/contracts';
import type { Stage } from '@archwright/records';
import { told } from '../tell.js';
import { missingToPass, type StageGate } from './stage-gates.js';

/** What decides whether a stage may go on. */
export interface StageFacts {
  readonly state: Stage['state'];
  /** A saved capture has not been checked yet. */
  readonly checking: boolean;
  readonly gates: readonly StageGate[];
  /** Reason of an undecided alert; null when there is none. */
  readonly alert: string | null;
  /** Reason of a late finding that nobody has answered; null when there is none. */
  readonly lateFinding: string | null;
  /** Reasons of failed checks in force. */
  readonly failed: readonly string[];
  /** Laboratory work for the visit that is not finished. */
  readonly unfinished: readonly string[];
  /** Finished for the visit, and not in the clinic. */
  readonly onItsWay: readonly string[];
  /** Made for the visit, and in the clinic. */
  readonly here: readonly string[];
}

interface Standing {
  readonly verdict: StageBoard['cards'][number]['verdict'];
  readonly reason: Told;
}

/** One verdict for a stage, and why: what needs a person's decision comes before what has to be done first. */
export function standingOf(facts: StageFacts): Standing {
  if (facts.state === 'passed' && facts.lateFinding === null)
    return { verdict: 'may-go-on', reason: told('standing-passed') };
  if (facts.state === 'repeated') return { verdict: 'not-ready', reason: told('standing-over') };
  if (facts.alert !== null) return { verdict: 'decide', reason: asWritten(facts.alert) };
  if (facts.lateFinding !== null) return { verdict: 'decide', reason: asWritten(facts.lateFinding) };
  if (facts.unfinished.length > 0)
    return { verdict: 'not-ready', reason: told('standing-unmade', someOf(facts.unfinished)) };
  if (facts.onItsWay.length > 0)
    return { verdict: 'not-ready', reason: told('standing-on-its-way', someOf(facts.onItsWay)) };
  if (facts.checking) return { verdict: 'check-first', reason: told('standing-checking') };
  const [failed] = facts.failed;
  if (!hasBegun(facts.state) && failed === undefined) return standingBefore(facts);
  const missing = missingToPass(facts.gates);
  // A failed check that a clinician has set aside is in no gate's list any more.
  if (failed !== undefined && missing.includes(failed)) return { verdict: 'check-first', reason: asWritten(failed) };
  if (missing.length > 0) return { verdict: 'check-first', reason: told('standing-missing', someOf(missing)) };
  return { verdict: 'may-go-on', reason: told('standing-complete') };
}

const hasBegun = (state: Stage['state']): boolean => state === 'in-progress' || state === 'passed';

/** What the visit itself will bring is not missing before it begins. */
function standingBefore({ gates, here }: StageFacts): Standing {
  const missing = gates.flatMap(({ missingBeforehand }) => missingBeforehand);
  if (missing.length > 0) return { verdict: 'check-first', reason: told('standing-missing', someOf(missing)) };
  const reason = here.length === 0 ? told('standing-ready') : told('standing-ready-with', someOf(here));
  return { verdict: 'may-go-on', reason };
}

const asWritten = (text: string): Told => told('as-written', { text });

/** The first three, and how many more. */
function someOf(items: readonly string[]): Record<string, Filling | null> {
  const [one, two, three, ...rest] = items.map((title) => ({ title }));
  return { one: one ?? null, two: two ?? null, three: three ?? null, more: rest.length };
}
