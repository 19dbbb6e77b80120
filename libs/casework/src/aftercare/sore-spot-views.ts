import { localDate } from '@archwright/calendar';
import type { AdjustmentView, ReferralTaskView, SoreSpotView } from '@archwright/contracts';
import { soreSpotStatus } from '@archwright/measures';
import { Adjustment, Clinic, ReferralTask, SoreSpot, TreatmentCase, UserAccount } from '@archwright/records';
import { In, type EntityManager, type FindOptionsWhere } from 'typeorm';

/** A spot with its counter as it stands on a date of the clinic. */
export async function viewSoreSpot(tx: EntityManager, id: string, today: string): Promise<SoreSpotView> {
  const { caseId } = await tx.findOneByOrFail(SoreSpot, { id });
  const found = (await viewSoreSpots(tx, caseId, today)).find((spot) => spot.id === id);
  if (found === undefined) throw new Error('A sore spot is among those of its case.');
  return found;
}

/** Spots of a case: open ones first, then the latest. */
export async function viewSoreSpots(tx: EntityManager, caseId: string, today: string): Promise<SoreSpotView[]> {
  const spots = await tx.find(SoreSpot, { where: { caseId }, order: { foundOn: 'DESC', id: 'DESC' } });
  const { homeClinicId } = await tx.findOneByOrFail(TreatmentCase, { id: caseId });
  const { zone } = await tx.findOneByOrFail(Clinic, { id: homeClinicId });
  const adjustments = await loadAdjustments(tx, { caseId });
  const tasks = await tx.findBy(ReferralTask, { caseId });
  const names = await namesOf(tx, [...spots.map(({ foundBy }) => foundBy), ...tasks.flatMap((t) => t.decidedBy ?? [])]);
  const views = spots.map((spot): SoreSpotView => {
    const own = adjustments.filter(({ soreSpotId }) => soreSpotId === spot.id);
    const task = tasks.find(({ soreSpotId }) => soreSpotId === spot.id);
    const { id, version, arch, region, side, foundOn, pain, note, resolvedOn } = spot;
    const adjustedOn = own.map(({ doneAt }) => localDate(Date.parse(doneAt), zone));
    return {
      ...{ id, version, caseId, arch, region, side, foundOn, pain, note },
      foundBy: names.get(spot.foundBy) ?? '',
      suspectedCause: spot.suspectedCause as SoreSpotView['suspectedCause'], // only `recordSoreSpot` writes it
      healedOn: resolvedOn,
      watch: soreSpotStatus({ arch, region, foundOn, adjustedOn, healedOn: resolvedOn }, today),
      adjustments: own,
      referral: task === undefined ? null : viewOfTask(task, names),
    };
  });
  return [...views.filter(({ healedOn }) => healedOn === null), ...views.filter(({ healedOn }) => healedOn !== null)];
}

/** In the order in which they were made. */
export async function loadAdjustments(
  tx: EntityManager,
  where: FindOptionsWhere<Adjustment>,
): Promise<AdjustmentView[]> {
  const rows = await tx.find(Adjustment, { where, order: { doneAt: 'ASC', id: 'ASC' } });
  const names = await namesOf(
    tx,
    rows.map(({ doneBy }) => doneBy),
  );
  return rows.map(({ id, caseId, soreSpotId, arch, surface, what, amount, doneAt, doneBy }) => ({
    ...{ id, caseId, soreSpotId, arch, surface, what, amount },
    doneAt: doneAt.toISOString(),
    doneBy: names.get(doneBy) ?? '',
  }));
}

export async function viewReferralTask(tx: EntityManager, id: string): Promise<ReferralTaskView> {
  const task = await tx.findOneByOrFail(ReferralTask, { id });
  return viewOfTask(task, await namesOf(tx, task.decidedBy === null ? [] : [task.decidedBy]));
}

function viewOfTask(task: ReferralTask, names: ReadonlyMap<string, string>): ReferralTaskView {
  const { id, version, reason, dueOn, state, decidedAt, decidedBy, decisionNote } = task;
  return {
    ...{ id, version, reason, dueOn, state, decisionNote },
    decidedAt: decidedAt?.toISOString() ?? null,
    decidedBy: decidedBy === null ? null : (names.get(decidedBy) ?? ''),
  };
}

async function namesOf(tx: EntityManager, userIds: readonly string[]): Promise<Map<string, string>> {
  const accounts = await tx.findBy(UserAccount, { id: In([...new Set(userIds)]) });
  return new Map(accounts.map(({ id, name }) => [id, name]));
}
