import { Appointment, CourierLeg, CustodyObject, Stage, type ArrivalCheck } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { kindOfObject } from '../capture/custody-kind.js';
import { loadChain, type LoadedChain } from '../cases/chain.js';
import { notToBeUsed } from '../custody/fit-for-use.js';
import { loadCaseCustody, objectsInClinic, trackedAs } from '../custody/objects-in-clinic.js';
import type { WorkForVisit } from './outlook.js';

/** What the laboratory makes for a visit and where it is; `title` names the visit. */
export interface LoadedWork extends WorkForVisit {
  readonly title: string;
}

/** Reads the work between the visit before and this one, as the plan and the shelves have it. */
export async function loadWorkForVisit(
  tx: EntityManager,
  { caseId, stageId, appointmentId }: ArrivalCheck,
  now: Date,
): Promise<LoadedWork> {
  const loaded = await loadChain(tx, caseId);
  const stage = await tx.findOneByOrFail(Stage, { id: stageId });
  const { startsAt: visitAt } = await tx.findOneByOrFail(Appointment, { id: appointmentId });
  const { chain, rows } = loaded;
  const isThere = new Set(objectsInClinic(loaded, await loadCaseCustody(tx, caseId), now));
  const missing = madeFor(loaded, stage).filter(({ code }) => !isThere.has(code));
  const steps = rows.steps.filter(({ beforeStage, state }) => beforeStage === stage.code && state !== 'discarded');
  return {
    title: chain.stages.find(({ code }) => code === stage.code)?.title ?? stage.code,
    visitAt,
    missing: missing.map(({ title }) => title),
    obstacle: await obstacleOf(tx, caseId, missing, now),
    steps: steps.map(({ code, state, startsAt, endsAt }) => {
      const title = chain.steps.find((step) => step.code === code)?.title ?? code;
      return { title, state, startsAt, endsAt };
    }),
    runArrivesAt: await lastRun(tx, caseId, stage.code),
  };
}

type Objects = LoadedChain['chain']['objects'];

/** Objects that laboratory steps make for a visit; casts stay at the laboratory. */
function madeFor({ chain }: LoadedChain, { code, arches }: Stage): Objects {
  return chain.objects.filter(
    (object) =>
      kindOfObject(object.code) !== 'cast' &&
      object.arches.some((arch) => arches.includes(arch)) &&
      chain.steps.some((step) => step.code === object.madeAt && step.beforeStage === code),
  );
}

/** A tracked object that nobody may work with keeps the visit from its work, whatever the plan says. */
async function obstacleOf(tx: EntityManager, caseId: string, missing: Objects, now: Date): Promise<string | null> {
  const custody = await tx.findBy(CustodyObject, { caseId });
  for (const object of missing) {
    for (const thing of trackedAs(object, custody)) {
      if (thing.state === 'packed' || thing.state === 'in-transit' || thing.state === 'expected') continue;
      const reason = notToBeUsed(thing, now);
      if (reason !== null) return `${thing.code}: ${reason}`;
    }
  }
  return null;
}

async function lastRun(tx: EntityManager, caseId: string, beforeStage: string): Promise<Date | null> {
  const [leg] = await tx.find(CourierLeg, {
    where: { caseId, beforeStage, direction: 'to-clinic' },
    order: { arrivesAt: 'DESC' },
  });
  return leg === undefined || leg.state === 'cancelled' ? null : leg.arrivesAt;
}
