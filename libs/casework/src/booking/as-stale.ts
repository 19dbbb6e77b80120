import { DomainError } from '@archwright/kernel';
import { PlanStaleError } from '../planning/stored-plan.js';

/** Time that somebody else has taken meanwhile makes a plan stale, whatever the records call it. */
export async function asStale(work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    const isTaken =
      error instanceof DomainError && (error.code === 'records.occupied' || error.code === 'records.batch-full');
    throw isTaken ? new PlanStaleError(error.message) : error;
  }
}
