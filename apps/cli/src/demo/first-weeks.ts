import {
  casePage,
  caseView,
  holdView,
  offersView,
  patientPage,
  practiceView,
  type CaseView,
  type PracticeView,
} from '@archwright/contracts';
import type { FirstWeeks } from '../start/first-weeks.js';
import { RefusedCall } from './api-session.js';
import { Cast, StoryBroken, must } from './cast.js';
import { Narrator } from './narrator.js';
import { Treatment } from './treatment.js';

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** How long before the present the demonstration begins. */
export const FIRST_WEEKS_MS = 14 * DAY_MS;

/** Patients of the scenario who are under treatment when somebody first looks at it; the others come later. */
const CASES = [
  { family: 'Sampleson', path: 'digital-printed-bases', daysAgo: 14 },
  { family: 'Placeholder', path: 'conventional', daysAgo: 14 },
  { family: 'Invented', path: 'abbreviated', daysAgo: 10 },
  { family: 'Namely', path: 'conventional', daysAgo: 6 },
  { family: 'Fictive', path: 'digital-printed-bases', daysAgo: 3 },
  { family: 'Testwell', path: 'conventional', daysAgo: 1 },
] as const;

/** Something that is done at a time. */
interface Deed {
  readonly of: UnderWay;
  readonly atMs: number;
  readonly run: () => Promise<void>;
}

/** A case under way, with its state after its last deed. */
interface UnderWay {
  readonly family: string;
  readonly treatment: Treatment;
  state: CaseView;
}

/**
 * Lives through the weeks up to `until`: cases are opened and booked, their visits held and their laboratory work done at
 * the times they are planned for, all through the service as people would. Its clock ends at `until`. What a run before
 * has done stays as it is, and a case that goes another way than it should is left to itself.
 *
 * @throws {StoryBroken} naming the cases that did, when all is over
 */
export async function playFirstWeeks(url: string, { from, until, signal }: FirstWeeks): Promise<void> {
  const cast = new Cast(url, signal);
  await cast.signIn();
  const practice = await cast.desk.call({ method: 'GET', path: '/practice', answer: practiceView });
  const underWay = new Set<UnderWay>();
  const waiting = [...CASES];
  const strayed: string[] = [];
  for (;;) {
    const [next] = waiting;
    const bookAtMs = next === undefined ? Infinity : from.getTime() + FIRST_WEEKS_MS - next.daysAgo * DAY_MS;
    const deed = firstOf([...underWay].flatMap((each) => deedsOf(cast, each)));
    if (Math.min(bookAtMs, deed?.atMs ?? Infinity) >= until.getTime()) break;
    if (next !== undefined && bookAtMs <= (deed?.atMs ?? Infinity)) {
      waiting.shift();
      await straying(next.family, strayed, async () => {
        await cast.moveClock(new Date(bookAtMs).toISOString());
        const state = await book(cast, practice, next);
        const treatment = new Treatment(cast, state.id, new Narrator(() => undefined));
        underWay.add({ family: next.family, treatment, state });
      });
    } else if (deed !== null) {
      const { of } = deed;
      if (!(await straying(of.family, strayed, deed.run))) underWay.delete(of);
    }
  }
  await cast.moveClock(until.toISOString());
  if (strayed.length > 0) throw new StoryBroken(strayed.join('; '));
}

/** @returns false when the case went another way, which is then told in `strayed` */
async function straying(family: string, strayed: string[], work: () => Promise<void>): Promise<boolean> {
  try {
    await work();
    return true;
  } catch (error) {
    if (!(error instanceof StoryBroken) && !(error instanceof RefusedCall)) throw error;
    strayed.push(`${family}: ${error.message}`);
    return false;
  }
}

/** The patient's case with all its visits booked: opened and booked now, unless that was done before. */
async function book(cast: Cast, practice: PracticeView, { family, path }: (typeof CASES)[number]): Promise<CaseView> {
  const { items } = await cast.desk.call({ method: 'GET', path: `/cases?q=${family}`, answer: casePage });
  const [known] = items;
  const { id, stages } =
    known === undefined
      ? await open(cast, practice, { family, path })
      : await cast.desk.call({ method: 'GET', path: `/cases/${known.id}`, answer: caseView });
  const isBooked = stages.some(({ appointmentState: is }) => is !== null && is !== 'held');
  return isBooked
    ? cast.desk.call({ method: 'GET', path: `/cases/${id}`, answer: caseView })
    : confirm(cast, id, family);
}

async function open(
  cast: Cast,
  practice: PracticeView,
  { family, path }: Pick<(typeof CASES)[number], 'family' | 'path'>,
): Promise<CaseView> {
  const { items } = await cast.desk.call({ method: 'GET', path: `/patients?q=${family}`, answer: patientPage });
  const version = must(
    practice.paths.find(({ code }) => code === path),
    `the path ${path}`,
  ).versionId;
  return cast.desk.call({
    method: 'POST',
    path: '/cases',
    answer: caseView,
    body: {
      patientId: must(items[0], family).id,
      arches: ['upper', 'lower'].map((arch) => ({ arch, pathVersionId: version })),
      clinicIds: practice.clinics.map((clinic) => clinic.id),
    },
  });
}

/** Asks for an offer, holds and confirms it; a hold from before ends with that. */
async function confirm(cast: Cast, id: string, family: string): Promise<CaseView> {
  const { offers } = await cast.desk.call({
    method: 'POST',
    path: `/cases/${id}/offers`,
    body: { count: 1 },
    answer: offersView,
  });
  const offerId = must(offers[0], `an offer for ${family}`).id;
  const hold = await cast.desk.call({
    method: 'POST',
    path: `/cases/${id}/holds`,
    body: { offerId, kind: 'phone' },
    answer: holdView,
  });
  const body = { planHash: hold.planHash, firm: 'all' };
  return cast.desk.call({ method: 'POST', path: `/holds/${hold.id}/confirm`, body, answer: caseView });
}

/** What comes next in a case: the visit under way or its next one, and the laboratory work that can be taken up or laid down. */
function deedsOf(cast: Cast, underWay: UnderWay): Deed[] {
  const { treatment, state } = underWay;
  const deed = (at: string, work: () => Promise<void>): Deed => ({
    of: underWay,
    atMs: Date.parse(at),
    run: async () => {
      await cast.moveClock(at);
      await work();
      underWay.state = await treatment.state();
    },
  });
  const visit = state.stages.find(
    ({ state: is, startsAt, appointmentState }) =>
      startsAt !== null &&
      (is === 'planned' || is === 'ready' || is === 'in-progress' || appointmentState === 'in-progress'),
  );
  const visits =
    visit?.startsAt == null
      ? []
      : [
          deed(new Date(Date.parse(visit.startsAt) - 5 * MINUTE_MS).toISOString(), async () => {
            if (visit === state.stages[0]) await treatment.consent();
            await treatment.completeStage(visit.code);
          }),
        ];
  const work = state.labSteps.flatMap(({ id, state: is, startsAt, endsAt }) => {
    if ((is === 'planned' || is === 'ready') && startsAt !== null)
      return [deed(startsAt, () => treatment.actOnStep(id, 'start'))];
    return is === 'started' && endsAt !== null ? [deed(endsAt, () => treatment.actOnStep(id, 'finish'))] : [];
  });
  return [...visits, ...work];
}

function firstOf(deeds: readonly Deed[]): Deed | null {
  return deeds.reduce<Deed | null>((first, deed) => (first === null || deed.atMs < first.atMs ? deed : first), null);
}
