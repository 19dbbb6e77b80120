import type { CustodyObject } from '@archwright/records';
import { WrongStateError } from '../errors.js';

type Thing = Pick<CustodyObject, 'code' | 'kind' | 'state' | 'stateReason' | 'useBy'>;

/** Why nobody may work with an object now; null when nothing stands against it. */
export function notToBeUsed({ state, stateReason, useBy }: Thing, now: Date): string | null {
  if (state === 'quarantined') return `It is quarantined: ${stateReason ?? 'no reason noted'}`;
  if (state !== 'in-use') return `It is ${state.replaceAll('-', ' ')}`;
  return pastUseBy({ useBy }, now);
}

/** Why an object has grown too old; null while it has not. */
export function pastUseBy({ useBy }: Pick<Thing, 'useBy'>, now: Date): string | null {
  return useBy !== null && useBy <= now ? `Its use-by passed at ${useBy.toISOString()}` : null;
}

/**
 * Why an object may not leave now; null when it may. A declaration is somebody's word: it does not prove that the object
 * is clean, and how it has to be disinfected is for the local infection-control rules to say.
 *
 * @param isDeclared whether its disinfection was declared since it came to where it is
 */
export function notToBePacked(thing: Thing, isDeclared: boolean, now: Date): string | null {
  const unfit = notToBeUsed(thing, now);
  if (unfit !== null) return unfit;
  if (thing.kind === 'scan-file') return 'It is a file and does not travel in a parcel';
  return isDeclared ? null : 'No disinfection of it is declared since it came here';
}

/** @throws {WrongStateError} with the reason against it */
export function requireFit({ code }: Thing, reason: string | null, accepted: string): void {
  if (reason !== null) throw new WrongStateError(`Object ${code}`, `not to be used: ${reason}`, accepted);
}
