import type { AftercareView, SoreSpotView } from '@archwright/contracts';
import { cautions } from '@archwright/protocol';
import { Organisation } from '@archwright/records';
import { IsNull, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { requireCase } from '../cases/case-access.js';
import { linkedCases } from '../cases/linked-cases.js';
import { recallsOfCase } from './recall-list.js';
import { recallRuleWords } from './recall-rule.js';
import { loadAdjustments, viewSoreSpots } from './sore-spot-views.js';
import { clinicDay } from './treated-case.js';

/**
 * Everything after placement, with the counters as they stand today.
 *
 * @throws {RecordNotFoundError} for a case unknown here or outside the actor's clinics
 */
export async function viewAftercare(
  tx: EntityManager,
  actor: Actor,
  caseId: string,
  now: Date,
): Promise<AftercareView> {
  const treatmentCase = await requireCase(tx, actor, caseId);
  const { today } = await clinicDay(tx, treatmentCase, now);
  const { settings } = await tx.findOneByOrFail(Organisation, { id: treatmentCase.organisationId });
  const soreSpots = await viewSoreSpots(tx, caseId, today);
  return {
    caseId,
    caseNumber: treatmentCase.number,
    on: today,
    sentence: sentenceOf(soreSpots),
    caution: persistentSore(),
    soreSpots,
    recallRule: recallRuleWords(settings),
    recalls: await recallsOfCase(tx, caseId),
    followingCases: (await linkedCases(tx, actor, treatmentCase)).followingCases,
    otherAdjustments: await loadAdjustments(tx, { caseId, soreSpotId: IsNull() }),
  };
}

/** What asks for a person comes first. */
function sentenceOf(soreSpots: readonly SoreSpotView[]): string {
  const toDecide = soreSpots.filter(({ watch, referral }) => watch.state === 'refer' && undecided(referral)).length;
  if (toDecide > 0) return `${counted(toDecide, 'sore spot has', 'sore spots have')} not healed in two weeks: refer.`;
  const open = soreSpots.filter(({ healedOn }) => healedOn === null).length;
  return open === 0 ? 'No sore spot is open.' : `${counted(open, 'sore spot is', 'sore spots are')} open.`;
}

const undecided = (referral: SoreSpotView['referral']): boolean => referral === null || referral.state === 'open';

const counted = (count: number, one: string, many: string): string => `${String(count)} ${count === 1 ? one : many}`;

function persistentSore(): AftercareView['caution'] {
  const caution = cautions.find(({ code }) => code === 'persistent-sore');
  if (caution === undefined) throw new Error('The caution about a sore that does not heal is missing.');
  const { hazard, text, source } = caution;
  return { hazard, text: `${text} The licensed clinician and the local rules of referral decide.`, source };
}
