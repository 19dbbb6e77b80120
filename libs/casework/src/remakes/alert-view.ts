import type { AlertPage, AlertQuery, RemakeAlertView, Ripple } from '@archwright/contracts';
import { decodeCursor, pageOf } from '@archwright/platform';
import { Clinic, PatientIdentity, RemakeAlert, ReplanProposal, Stage, TreatmentCase } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { CASE_IN_SCOPE, caseScope, requireCase } from '../cases/case-access.js';
import { loadChains } from '../cases/chain.js';
import { RecordNotFoundError } from '../errors.js';

/** One alert with the plans that would repair it. */
export async function viewAlert(tx: EntityManager, actor: Actor, alertId: string): Promise<RemakeAlertView> {
  const alert = await tx.findOneBy(RemakeAlert, { id: alertId });
  if (alert === null) throw new RecordNotFoundError('alert', alertId);
  await requireCase(tx, actor, alert.caseId);
  const [view] = await viewsOf(tx, actor, [alert]);
  if (view === undefined) throw new RecordNotFoundError('alert', alertId);
  return view;
}

/** Alerts of the actor's cases, the newest first. */
export async function listAlerts(
  tx: EntityManager,
  actor: Actor,
  { state, cursor, limit }: AlertQuery,
): Promise<AlertPage> {
  const rows: { id: string }[] = await tx.query(
    `SELECT a.id FROM remake_alert a JOIN treatment_case c ON c.id = a.case_id
     WHERE ${CASE_IN_SCOPE} AND ($3::text IS NULL OR a.state = $3) AND ($4::uuid IS NULL OR a.id < $4)
     ORDER BY a.id DESC LIMIT $5`,
    [...caseScope(actor), state ?? null, cursor === undefined ? null : decodeCursor(cursor).id, limit + 1],
  );
  // Ids are made in the order of time, so that they also order the list.
  const { items, next } = pageOf(rows, limit, ({ id }) => ({ sortKey: '', id }));
  const alerts = await tx.findBy(RemakeAlert, { id: In(items.map(({ id }) => id)) });
  const inOrder = items.flatMap(({ id }) => alerts.find((alert) => alert.id === id) ?? []);
  return { items: await viewsOf(tx, actor, inOrder), next };
}

async function viewsOf(tx: EntityManager, actor: Actor, alerts: readonly RemakeAlert[]): Promise<RemakeAlertView[]> {
  const cases = await tx.findBy(TreatmentCase, { id: In(alerts.map(({ caseId }) => caseId)) });
  const people = await tx.findBy(PatientIdentity, { patientId: In(cases.map(({ patientId }) => patientId)) });
  const clinics = await tx.findBy(Clinic, { id: In(cases.map(({ homeClinicId }) => homeClinicId)) });
  const stages = await tx.findBy(Stage, { id: In(alerts.map(({ stageId }) => stageId)) });
  const proposals = await tx.find(ReplanProposal, {
    where: { alertId: In(alerts.map(({ id }) => id)), state: In(['open', 'accepted']) },
    order: { movedVisits: 'ASC', id: 'ASC' },
  });
  const chains = await loadChains(
    tx,
    alerts.map(({ caseId }) => caseId),
  );
  return alerts.map((alert) => {
    const chain = chains.get(alert.caseId)?.chain;
    const titleOf = (code: string) =>
      [...(chain?.stages ?? []), ...(chain?.steps ?? [])].find((part) => part.code === code)?.title ?? code;
    const stage = stages.find(({ id }) => id === alert.stageId)?.code ?? '';
    const treatmentCase = cases.find(({ id }) => id === alert.caseId);
    const person = people.find(({ patientId }) => patientId === treatmentCase?.patientId);
    const view: RemakeAlertView = {
      id: alert.id,
      version: alert.version,
      caseId: alert.caseId,
      caseNumber: treatmentCase?.number ?? '',
      patientName: person === undefined ? '(erased)' : `${person.givenName} ${person.familyName}`,
      stage,
      stageTitle: titleOf(stage),
      trigger: alert.trigger,
      reason: alert.reason,
      returnToStage: alert.returnToStage,
      returnToTitle: titleOf(alert.returnToStage),
      arches: alert.arches,
      discards: alert.discards,
      state: alert.state,
      raisedAt: alert.raisedAt.toISOString(),
      decideBy: alert.decideBy?.toISOString() ?? null,
      zone: clinics.find(({ id }) => id === treatmentCase?.homeClinicId)?.zone ?? 'UTC',
      proposals: proposals.filter(({ alertId }) => alertId === alert.id).map(proposalView),
      noProposalReason: alert.noProposalReason,
    };
    return actor.role === 'lab' ? withoutIdentity(view, alert.raisedBy !== null) : view;
  });
}

/** Ripples were written by `proposeReplan` alone. */
const proposalView = (row: ReplanProposal): RemakeAlertView['proposals'][number] => ({
  id: row.id,
  planHash: row.planHash,
  label: row.label,
  movedVisits: row.movedVisits,
  leastMovedVisits: row.leastMovedVisits,
  otherCases: row.otherCases,
  ripples: row.ripples as Ripple[],
});

/** A laboratory sees the work and its dates: nobody's name, no telephone number, nothing that a person typed. */
function withoutIdentity(view: RemakeAlertView, isTyped: boolean): RemakeAlertView {
  return {
    ...view,
    patientName: '',
    reason: isTyped ? `Found at ${view.stage}: ${view.trigger.replaceAll('-', ' ')}.` : view.reason,
    proposals: view.proposals.map((proposal) => ({
      ...proposal,
      ripples: proposal.ripples.map((ripple) => ({
        ...ripple,
        calls: [],
        visits: ripple.visits.map((visit) => ({ ...visit, patientName: '' })),
      })),
    })),
  };
}
