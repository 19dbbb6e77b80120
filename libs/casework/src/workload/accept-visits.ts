import type { Ripple, ShownProposal, VisitProposal, VisitProposals } from '@archwright/contracts';
import { Laboratory, TreatmentCase, WorkloadProposal, WorkloadRun, recordAudit } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { bookTogether } from '../booking/book-together.js';
import { personOf } from '../capture/person.js';
import { requireCase } from '../cases/case-access.js';
import { RecordNotFoundError } from '../errors.js';
import { clinicScope } from '../patients/patient-access.js';
import { lockProposal, noteAccepted, requireOpen } from './open-proposal.js';

/** Of each laboratory's latest search, if every case that would change is of the actor's clinics. */
export async function listVisitProposals(tx: EntityManager, actor: Actor): Promise<VisitProposals> {
  const rows: { id: string }[] = await tx.query(
    `SELECT p.id FROM workload_proposal p JOIN workload_run r ON r.id = p.run_id
     WHERE p.kind = 'free-visits' AND p.state = 'open'
       AND NOT EXISTS (SELECT FROM workload_run later WHERE later.laboratory_id = r.laboratory_id
         AND (later.asked_at, later.id) > (r.asked_at, r.id))
       AND NOT EXISTS (SELECT FROM jsonb_array_elements(p.moves -> 'ripples') part
         JOIN treatment_case c ON c.id = (part ->> 'caseId')::uuid
         WHERE $1::uuid[] IS NOT NULL AND NOT c.clinic_ids && $1::uuid[])
     ORDER BY r.asked_at DESC, p.id`,
    [clinicScope(actor)],
  );
  const items: VisitProposal[] = [];
  for (const { id } of rows) items.push(await viewOf(tx, id));
  return { items };
}

/**
 * Moves exactly the visits and the work of a proposal, in all its cases or in none.
 *
 * @throws {RecordNotFoundError} when one of the cases is not of the actor's clinics
 * @throws {PlanStaleError} when a case has changed since, or some of the time has been taken
 */
export async function acceptVisits(
  tx: EntityManager,
  actor: Actor,
  proposalId: string,
  version: number,
  now: Date,
): Promise<VisitProposal> {
  const decidedBy = personOf(actor, 'A plan that moves visits is accepted by a person.');
  const open = await lockProposal(tx, proposalId);
  const { proposal } = open;
  if (proposal.kind !== 'free-visits') throw new RecordNotFoundError('proposal', proposalId);
  const ripples = ripplesOf(proposal);
  for (const { caseId } of ripples) await requireCase(tx, actor, caseId);
  requireOpen(proposal, version);
  const planIds = ripples.map(({ id }) => id);
  await bookTogether(tx, actor, planIds, now);
  await noteAccepted(tx, open, decidedBy, now);
  const subject = { subjectKind: 'workload-proposal', subjectId: proposalId };
  const details = { kind: proposal.kind, cases: ripples.length };
  await recordAudit(tx, { actorId: decidedBy, action: 'accept-workload-proposal', ...subject, details, at: now });
  return viewOf(tx, proposalId);
}

/** Written by `keepVisits` alone. */
const ripplesOf = ({ moves }: WorkloadProposal): Ripple[] => (moves as { ripples: Ripple[] }).ripples;

async function viewOf(tx: EntityManager, id: string): Promise<VisitProposal> {
  const proposal = await tx.findOneByOrFail(WorkloadProposal, { id });
  const run = await tx.findOneByOrFail(WorkloadRun, { id: proposal.runId });
  const laboratory = await tx.findOneByOrFail(Laboratory, { id: run.laboratoryId });
  const { sentence, certainty, before, after } = proposal.shown as ShownProposal;
  const ripples = ripplesOf(proposal);
  const cases = await tx.findBy(TreatmentCase, { id: In(ripples.map(({ caseId }) => caseId)) });
  const numberOf = (caseId: string): string => cases.find((each) => each.id === caseId)?.number ?? '';
  return {
    ...{ id, version: proposal.version, state: proposal.state, laboratory: laboratory.name },
    ...{ askedAt: run.askedAt.toISOString(), sentence, certainty, before, after },
    ripples: ripples.map((ripple) => ({ ...ripple, caseNumber: numberOf(ripple.caseId) })),
  };
}
