import type { DisturbancePage, DisturbanceQuery, DisturbanceView, Ripple } from '@archwright/contracts';
import { decodeCursor, pageOf } from '@archwright/platform';
import { DisturbanceProposal, PatientIdentity, TreatmentCase } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { loadChains } from '../cases/chain.js';
import { clinicScope } from '../patients/patient-access.js';
import { findAffected, type AffectedCase } from './affected.js';
import { isUndecided, loadDisturbance, type DisturbanceRecord } from './disturbance-record.js';
import { IN_DISTURBANCE_SCOPE } from './subjects.js';

/** @throws {RecordNotFoundError} for one that is unknown here, or of nothing that the actor's clinics have to do with */
export async function viewDisturbance(
  tx: EntityManager,
  actor: Actor,
  id: string,
  now: Date,
): Promise<DisturbanceView> {
  return viewOf(tx, actor, await loadDisturbance(tx, actor, id), now);
}

/** The latest entered first. */
export async function listDisturbances(
  tx: EntityManager,
  actor: Actor,
  { state, cursor, limit }: DisturbanceQuery,
  now: Date,
): Promise<DisturbancePage> {
  const rows: { id: string }[] = await tx.query(
    `SELECT d.id FROM disturbance d WHERE ${IN_DISTURBANCE_SCOPE}
       AND ($2::text IS NULL OR d.state = $2) AND ($3::uuid IS NULL OR d.id < $3) ORDER BY d.id DESC LIMIT $4`,
    [clinicScope(actor), state ?? null, cursor === undefined ? null : decodeCursor(cursor).id, limit + 1],
  );
  // Ids are made in the order of time, so that they also order the list.
  const { items, next } = pageOf(rows, limit, ({ id }) => ({ sortKey: '', id }));
  const views: DisturbanceView[] = [];
  for (const { id } of items) views.push(await viewDisturbance(tx, actor, id, now));
  return { items: views, next };
}

async function viewOf(
  tx: EntityManager,
  actor: Actor,
  { row, what, loss, subject }: DisturbanceRecord,
  now: Date,
): Promise<DisturbanceView> {
  const affected = isUndecided(row) ? await findAffected(tx, loss, now) : [];
  const proposals = await tx.find(DisturbanceProposal, {
    where: { disturbanceId: row.id, state: In(['open', 'accepted']) },
    order: { movedVisits: 'ASC', id: 'ASC' },
  });
  const caseIds = [
    ...affected.map(({ caseId }) => caseId),
    ...proposals.flatMap(({ leftCaseIds, ripples }) => [
      ...leftCaseIds,
      ...ripplesOf(ripples).map((each) => each.caseId),
    ]),
  ];
  const nameOf = await loadNames(tx, actor, caseIds);
  const visits = await loadVisits(tx, affected);
  const chains = await loadChains(
    tx,
    affected.map(({ caseId }) => caseId),
  );
  return {
    id: row.id,
    version: row.version,
    what,
    ...subject,
    startsAt: row.startsAt.toISOString(),
    endsAt: row.endsAt.toISOString(),
    reason: row.reason,
    isClosed: row.closureId !== null,
    state: row.state,
    enteredAt: row.enteredAt.toISOString(),
    affected: affected.map(({ caseId, appointmentIds, labStepIds }) => ({
      ...nameOf(caseId),
      visits: visits
        .filter((each) => each.caseId === caseId && appointmentIds.includes(each.appointmentId))
        .map(({ appointmentId, stage, startsAt, clinicName, zone }) => ({
          appointmentId,
          title: chains.get(caseId)?.chain.stages.find(({ code }) => code === stage)?.title ?? stage,
          startsAt: startsAt.toISOString(),
          clinicName,
          zone,
        })),
      labSteps: labStepIds.length,
    })),
    proposals: proposals.map((proposal) => {
      const ripples = ripplesOf(proposal.ripples);
      const changing = new Set([...ripples.map(({ caseId }) => caseId), ...proposal.leftCaseIds]);
      return {
        id: proposal.id,
        planHash: proposal.planHash,
        label: proposal.label,
        // Written by `proposeRepairs` alone.
        reach: proposal.rung as DisturbanceView['proposals'][number]['reach'],
        movedVisits: proposal.movedVisits,
        leastMovedVisits: proposal.leastMovedVisits,
        otherCases: proposal.otherCases,
        untouchedCases: affected.filter(({ caseId }) => !changing.has(caseId)).length,
        ripples: ripples.map((each) => withoutStrangers(each, nameOf(each.caseId).patientName !== '')),
        left: proposal.leftCaseIds.map(nameOf),
      };
    }),
    noProposalReason: row.noProposalReason,
  };
}

const ripplesOf = (ripples: DisturbanceProposal['ripples']): Ripple[] => ripples as Ripple[];

/** Who works elsewhere sees that a case of other clinics changes, and nobody's name or number. */
function withoutStrangers(ripple: Ripple, isKnown: boolean): Ripple {
  if (isKnown) return ripple;
  return { ...ripple, calls: [], visits: ripple.visits.map((visit) => ({ ...visit, patientName: '' })) };
}

type NamedCase = Pick<DisturbanceView['affected'][number], 'caseId' | 'caseNumber' | 'patientName'>;

async function loadNames(
  tx: EntityManager,
  actor: Actor,
  caseIds: readonly string[],
): Promise<(caseId: string) => NamedCase> {
  const cases = await tx.findBy(TreatmentCase, { id: In(caseIds) });
  const people = await tx.findBy(PatientIdentity, { patientId: In(cases.map(({ patientId }) => patientId)) });
  const scope = clinicScope(actor);
  return (caseId) => {
    const found = cases.find(({ id }) => id === caseId);
    const isOwn = found?.clinicIds.some((clinicId) => scope?.includes(clinicId) ?? true) ?? false;
    const person = people.find(({ patientId }) => patientId === found?.patientId);
    const name = person === undefined ? '(erased)' : `${person.givenName} ${person.familyName}`;
    return { caseId, caseNumber: found?.number ?? '', patientName: isOwn ? name : '' };
  };
}

interface VisitRow {
  readonly caseId: string;
  readonly appointmentId: string;
  readonly stage: string;
  readonly startsAt: Date;
  readonly clinicName: string;
  readonly zone: string;
}

function loadVisits(tx: EntityManager, affected: readonly AffectedCase[]): Promise<VisitRow[]> {
  return tx.query(
    `SELECT s.case_id AS "caseId", a.id AS "appointmentId", s.code AS stage, a.starts_at AS "startsAt",
       c.name AS "clinicName", c.zone
     FROM appointment a JOIN clinic c ON c.id = a.clinic_id JOIN appointment_stage x ON x.appointment_id = a.id
     JOIN stage s ON s.id = x.stage_id WHERE a.id = ANY ($1::uuid[]) ORDER BY a.starts_at, s.position`,
    [affected.flatMap(({ appointmentIds }) => appointmentIds)],
  );
}
