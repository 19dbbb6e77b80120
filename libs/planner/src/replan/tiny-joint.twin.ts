import type { SeededRandom } from '@archwright/kernel';
import { Twin, type TwinPlan, type TwinVisit } from '../chain/exhaustive.twin.js';
import type { ChainProblem } from '../chain/model.js';
import { tinyProblem } from '../chain/tiny-problem.twin.js';
import type { JointCase } from './joint-case.js';

/** A tiny case with every plan it could have. */
export interface TinyCase {
  readonly joint: JointCase;
  readonly plans: readonly TwinPlan[];
}

/**
 * A case of visits alone, each with one person and one chair, so that what a plan takes can be read off its visits. Its
 * booked visits are those of one of its plans, whichever `pick` says.
 */
export function tinyCase(key: string, random: SeededRandom, pick: (plans: number) => number): TinyCase | null {
  const drawn = tinyProblem(random, 'one-of-two-clinics');
  const problem: ChainProblem = {
    ...drawn,
    phases: [],
    visits: drawn.visits.map((visit) => ({
      ...visit,
      options: visit.options.map((option) => ({
        ...option,
        refused: false,
        clinicians: option.clinicians.slice(0, 1).map((clinician) => ({ ...clinician, refused: false })),
        chairs: option.chairs.slice(0, 1),
        assistants: null,
        kits: [],
      })),
    })),
  };
  const plans = new Twin(problem).plans();
  if (plans === null || plans.length === 0 || plans.length > 600) return null;
  const booked = plans[pick(plans.length)]!;
  return {
    joint: {
      key,
      problem,
      visits: booked.visits.map(({ start, clinic }) => ({ startSlot: start, clinic })),
      operations: [],
    },
    plans,
  };
}

export function movedOf({ joint }: TinyCase, { visits }: TwinPlan): number {
  return visits.filter(({ start, clinic }, at) => {
    const now = joint.visits[at]!;
    return now.startSlot !== start || now.clinic !== clinic;
  }).length;
}

/** When somebody is where, with whom. */
export interface TakenTime {
  readonly visits: readonly Omit<TwinVisit, 'option'>[];
}

/** Whether two plans never want the same person, and so the same clinic's one chair, at once. */
export function goTogether(one: TakenTime, other: TakenTime): boolean {
  return one.visits.every((a) =>
    other.visits.every((b) => {
      const apart = a.end <= b.start || b.end <= a.start;
      return apart || (a.clinician !== b.clinician && a.clinic !== b.clinic);
    }),
  );
}
