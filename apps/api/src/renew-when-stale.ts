import { PlanStaleError } from '@archwright/casework';

/**
 * Accepts a proposal; when it no longer fits, it is computed anew before the caller is told so, and what they see next is
 * what can be accepted now. The renewal is a change of its own, since the refused one has left nothing behind.
 */
export async function renewWhenStale<View>(accept: () => Promise<View>, renew: () => Promise<unknown>): Promise<View> {
  try {
    return await accept();
  } catch (error) {
    if (error instanceof PlanStaleError) await renew();
    throw error;
  }
}
