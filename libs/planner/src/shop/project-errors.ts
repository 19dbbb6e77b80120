import { DomainError } from '@archwright/kernel';
import type { Project } from './project.js';

/** An activity needs more of a resource than there is at any time. */
export class NeedAboveCapacityError extends DomainError {
  constructor(activity: number, resource: number, need: number, capacity: number) {
    super(
      'planner.need-above-capacity',
      `Activity ${activity} needs ${need} places of resource ${resource}, which has ${capacity}. ` +
        `Lower the need to that, or add places.`,
      { activity, resource, need, capacity },
    );
  }
}

/** Activities wait for one another in a circle, as longest waits make them do; this search takes shortest waits only. */
export class UnorderedProjectError extends DomainError {
  constructor() {
    super(
      'planner.unordered-project',
      'Some activities wait for one another in a circle. Accepted: waits that leave an order in which to start.',
    );
  }
}

/** @throws {NeedAboveCapacityError} naming the first need that nothing can meet */
export function requireRoom({ capacities, activities }: Project): void {
  activities.forEach(({ duration, needs }, activity) => {
    needs.forEach((need, resource) => {
      const capacity = capacities[resource]!;
      if (duration > 0 && need > capacity) throw new NeedAboveCapacityError(activity, resource, need, capacity);
    });
  });
}
