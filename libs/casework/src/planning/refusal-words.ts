import type { Filling, Told } from '@archwright/contracts';
import type { DomainError } from '@archwright/kernel';
import type { CaseChain } from '@archwright/protocol';
import { told } from '../tell.js';

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
export function refusalTold({ code, message, details }: Refusal, chain: CaseChain): Told {
  const titleOf = (part: unknown): Filling => ({
    title: [...chain.stages, ...chain.steps, ...chain.lags].find((each) => each.code === part)?.title ?? String(part),
  });
  switch (code) {
    case 'planner.no-clinician':
      return told('why-not-no-clinician', { title: titleOf(details['visit']) });
    case 'planner.visit-too-long': {
      const minutes = (field: string): number => Number(details[field]) * SLOT_MINUTES;
      return told('why-not-too-long', {
        title: titleOf(details['visit']),
        minutes: minutes('lengthSlots'),
        longest: minutes('longestOpeningSlots'),
      });
    }
    case 'planner.lab-without-capacity':
      return told('why-not-no-room');
    case 'planner.contradictory-waits':
      return told('why-not-waits', { title: titleOf(details['longest']) });
    case 'planner.contradictory-work': {
      const waits = (details['waits'] as readonly string[]).map((wait) =>
        told('named', { title: { title: waitTitle(wait, chain) } }),
      );
      return told('why-not-work', { waits: { list: waits } });
    }
    default:
      return told('as-written', { text: message });
  }
}

/** A wait of the path, or the wait of a laboratory step for what it is made from. */
function waitTitle(code: string, { lags, steps }: CaseChain): string {
  const wait =
    lags.find((each) => each.code === code) ?? steps.find(({ after }) => after.some(({ lag }) => lag === code));
  return wait?.title ?? code;
}
