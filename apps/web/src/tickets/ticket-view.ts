import type { DispatchStep, PracticeView } from '@archwright/contracts';
import { placeOf } from '../bench/bench-view.js';
import { dateAndTime } from '../time/wording.js';
import { benchWords } from '../words/bench.js';
import { archWords } from '../words/line.js';
import { ticketWords as words } from '../words/tickets.js';

/** What one ticket says. Nothing on it names the patient: it lies open at the bench. */
export interface Ticket {
  id: string;
  number: string;
  step: string;
  /** Number and step, for those who hear it. */
  job: string;
  bench: string;
  begins: string;
  handsOn: string;
  due: string;
  /** Materials that the patient must not come in touch with; empty when there are none. */
  avoid: string[];
  /** What the code says: the page of this job. */
  address: string;
}

/** The page of a job, as a camera has to be told it. */
export const jobAddress = (origin: string, stepId: string): string => `${origin}/bench/jobs/${stepId}`;

/** Addresses that mean this very computer: on a phone they lead nowhere. */
export const isOnlyHere = (hostname: string): boolean =>
  hostname === 'localhost' || hostname.endsWith('.localhost') || hostname.startsWith('127.') || hostname === '[::1]';

const DONE: readonly DispatchStep['state'][] = ['finished', 'rejected', 'discarded'];

/** Tickets of what is still to be done, in the order given, each in its laboratory's time. */
export function ticketsOf(
  steps: readonly DispatchStep[],
  { laboratories, today }: Pick<PracticeView, 'laboratories' | 'today'>,
  origin: string,
): Ticket[] {
  return steps
    .filter(({ state }) => !DONE.includes(state))
    .map((step) => {
      const title = words.step(step.title, archWords(step.arches));
      const zone = zoneOf(laboratories, step);
      return {
        id: step.id,
        number: step.caseNumber,
        step: title,
        job: words.job(step.caseNumber, title),
        bench: placeOf(step),
        begins: dateAndTime(step.startsAt, zone, today),
        handsOn: words.minutes(step.handsOnMinutes),
        due: step.dueBackAt === null ? words.notBooked : dateAndTime(step.dueBackAt, zone, today),
        avoid: step.avoidMaterials.map((material) => benchWords.material[material]),
        address: jobAddress(origin, step.id),
      };
    });
}

/** The wall clock by which the step's bench works. */
export const zoneOf = (
  laboratories: PracticeView['laboratories'],
  { workCentreId }: Pick<DispatchStep, 'workCentreId'>,
): string => laboratories.find(({ workCentres }) => workCentres.some(({ id }) => id === workCentreId))?.zone ?? 'UTC';
