import type { StageBoard } from '@archwright/contracts';
import type { Stage } from '@archwright/records';
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
  readonly reason: string;
}

/** One verdict for a stage, and why: what needs a person's decision comes before what has to be done first. */
export function standingOf(facts: StageFacts): Standing {
  if (facts.state === 'passed' && facts.lateFinding === null) return { verdict: 'may-go-on', reason: 'Passed.' };
  if (facts.state === 'repeated') return { verdict: 'not-ready', reason: 'This go is over; another one is planned.' };
  if (facts.alert !== null) return { verdict: 'decide', reason: facts.alert };
  if (facts.lateFinding !== null) return { verdict: 'decide', reason: facts.lateFinding };
  if (facts.unfinished.length > 0) return { verdict: 'not-ready', reason: listed('Not made yet', facts.unfinished) };
  if (facts.onItsWay.length > 0) return { verdict: 'not-ready', reason: listed('On its way', facts.onItsWay) };
  if (facts.checking) return { verdict: 'check-first', reason: 'What was recorded is being checked.' };
  const [failed] = facts.failed;
  if (!hasBegun(facts.state) && failed === undefined) return standingBefore(facts);
  const missing = missingToPass(facts.gates);
  // A failed check that a clinician has set aside is in no gate's list any more.
  if (failed !== undefined && missing.includes(failed)) return { verdict: 'check-first', reason: failed };
  if (missing.length > 0) return { verdict: 'check-first', reason: listed('Missing', missing) };
  return { verdict: 'may-go-on', reason: 'Everything asked for is recorded and no check has failed.' };
}

const hasBegun = (state: Stage['state']): boolean => state === 'in-progress' || state === 'passed';

/** What the visit itself will bring is not missing before it begins. */
function standingBefore({ gates, here }: StageFacts): Standing {
  const missing = gates.flatMap(({ missingBeforehand }) => missingBeforehand);
  if (missing.length > 0) return { verdict: 'check-first', reason: listed('Missing', missing) };
  const arrived = here.length === 0 ? '' : ` ${listed('Here', here)}`;
  return { verdict: 'may-go-on', reason: `Ready to begin.${arrived}` };
}

const SHOWN = 3;

function listed(what: string, items: readonly string[]): string {
  const rest = items.length - SHOWN;
  const more = rest > 0 ? ` and ${String(rest)} more` : '';
  return `${what}: ${items.slice(0, SHOWN).join('; ')}${more}.`;
}
