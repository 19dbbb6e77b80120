import type { CustodyObject, LabStep } from '@archwright/records';
import type { LoadedChain } from '../cases/chain.js';
import { notToBeUsed } from './fit-for-use.js';
import { trackedAs } from './objects-in-clinic.js';

type Step = Pick<LabStep, 'code' | 'arches' | 'afterStage'>;

/**
 * Says of a step what it would begin with and may not: an impression past its use-by, a record in quarantine. Where a
 * thing lies is left open, since work may be carried over without being tracked.
 *
 * @param custody the case's things
 */
export function unfitInputs(
  custody: readonly CustodyObject[],
  { chain }: Pick<LoadedChain, 'chain'>,
  now: Date,
): (step: Step) => string | null {
  return ({ code, arches, afterStage }) => {
    const before = chain.steps.find((step) => step.code === code)?.after ?? [];
    const takesFromVisit = before.some((part) => part.code === afterStage);
    if (!takesFromVisit) return null;
    const made = chain.objects.filter((object) => object.madeAt === afterStage);
    for (const object of made) {
      const things = trackedAs(object, custody).filter(({ arch }) => arch === null || arches.includes(arch));
      const newest = Math.max(...things.map(({ round }) => round));
      for (const thing of things.filter(({ round }) => round === newest)) {
        const reason = thing.state === 'quarantined' || thing.state === 'in-use' ? notToBeUsed(thing, now) : null;
        if (reason !== null) return `"${object.title}" to be fit for use. ${reason}`;
      }
    }
    return null;
  };
}
