import type { ChainObject } from '@archwright/protocol';
import { CourierLeg, CustodyObject } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { kindOfObject } from '../capture/custody-kind.js';
import type { LoadedChain } from '../cases/chain.js';
import { notToBeUsed } from './fit-for-use.js';

/** Runs that bring nothing any more. */
const IS_OVER = new Set<CourierLeg['state']>(['cancelled', 'arrived']);

/** Things with a code of one case, and the runs that bring its work back. */
export interface CaseCustody {
  readonly custody: readonly CustodyObject[];
  readonly legs: readonly CourierLeg[];
}

export async function loadCaseCustody(tx: EntityManager, caseId: string): Promise<CaseCustody> {
  const custody = await tx.findBy(CustodyObject, { caseId });
  return { custody, legs: await tx.findBy(CourierLeg, { caseId, direction: 'to-clinic' }) };
}

/**
 * Codes of a path's objects that are in the clinic and fit for use. What somebody booked in decides; work that nobody
 * tracks by code counts as arrived once the laboratory has finished it and no run that carries it is still on its way.
 */
export function objectsInClinic(
  { chain, rows }: Pick<LoadedChain, 'chain' | 'rows'>,
  { custody, legs }: CaseCustody,
  now: Date,
): string[] {
  return chain.objects
    .filter((object) => {
      const tracked = trackedAs(object, custody);
      if (tracked.length > 0)
        return tracked.every((thing) => thing.holder === 'clinic' && notToBeUsed(thing, now) === null);
      const making = chain.steps.find((step) => step.code === object.madeAt);
      if (making === undefined) return false;
      const own = rows.steps.filter((row) => row.code === making.code && row.state !== 'discarded');
      const isMade = own.length > 0 && own.every((row) => row.state === 'finished');
      const isOnItsWay = legs.some(
        (leg) => leg.beforeStage === making.beforeStage && !IS_OVER.has(leg.state) && leg.arrivesAt > now,
      );
      return isMade && !isOnItsWay;
    })
    .map(({ code }) => code);
}

/** Things with a code that are kept for an object of the path; none when nobody tracks it. */
export function trackedAs(object: ChainObject, custody: readonly CustodyObject[]): CustodyObject[] {
  return custody.filter(
    ({ kind, arch, state }) =>
      kind === kindOfObject(object.code) && state !== 'discarded' && (arch === null || object.arches.includes(arch)),
  );
}
