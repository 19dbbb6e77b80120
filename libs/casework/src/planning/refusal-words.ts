import type { DomainError } from '@archwright/kernel';
import type { CaseChain } from '@archwright/protocol';

/** What a search refuses, in parts that cross from thread to thread. */
export type Refusal = Pick<DomainError, 'code' | 'message' | 'details'>;

const SLOT_MINUTES = 5;

/** The stage that a refusal of the search is about; null when it names none. */
export function stageOfRefusal({ details }: Refusal, chain: CaseChain): string | null {
  const { visit, phase, longest } = details;
  if (typeof visit === 'string') return visit;
  const wait = chain.lags.find(({ code }) => code === longest);
  if (wait !== undefined) return chain.steps.find(({ code }) => code === wait.to)?.beforeStage ?? wait.to;
  return chain.phases.find(({ code }) => code === phase)?.beforeStage ?? null;
}

/** What can never be planned, in words of the practice instead of slots and codes. */
export function refusalInWords({ code, message, details }: Refusal, chain: CaseChain): string {
  const titleOf = (part: unknown): string =>
    [...chain.stages, ...chain.steps, ...chain.lags].find((each) => each.code === part)?.title ?? String(part);
  switch (code) {
    case 'planner.no-clinician':
      return `Nobody who may do "${titleOf(details['visit'])}" works at an accepted clinic.`;
    case 'planner.visit-too-long': {
      const minutes = (field: string) => String(Number(details[field]) * SLOT_MINUTES);
      return (
        `"${titleOf(details['visit'])}" takes ${minutes('lengthSlots')} minutes; ` +
        `the longest opening of an accepted clinic has ${minutes('longestOpeningSlots')}.`
      );
    }
    case 'planner.lab-without-capacity':
      return 'No laboratory has room for the work before this visit: free or add a place there.';
    case 'planner.contradictory-waits':
      return `The wait "${titleOf(details['longest'])}" ends before the waits on the way to it can be over.`;
    case 'planner.contradictory-work': {
      const waits = (details['waits'] as readonly string[]).map((wait) => `"${waitTitle(wait, chain)}"`).join(' or ');
      return `The laboratory work before this visit takes longer than ${waits} allows, even on empty benches.`;
    }
    default:
      return message;
  }
}

/** A wait of the path, or the wait of a laboratory step for what it is made from. */
function waitTitle(code: string, { lags, steps }: CaseChain): string {
  const wait =
    lags.find((each) => each.code === code) ?? steps.find(({ after }) => after.some(({ lag }) => lag === code));
  return wait?.title ?? code;
}
