import type { CaseView } from '@archwright/contracts';
import { LabStep, Occupancy, claim } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import {
  askOffers,
  bookedCase,
  confirmOf,
  found,
  holdOf,
  openCaseOf,
  type BookingPractice,
} from './booking-practice.js';

const HOUR_MS = 3_600_000;
/** The work of the booked case is planned so much later: behind its visit. */
const LATER_MS = 120 * HOUR_MS;
/** From the start of the other case's work, how long the places are busy: over the weekend, until both visits are due. */
const BUSY_MS = 75 * HOUR_MS;

/**
 * Two cases want one bench for the same work: the booked one is late, since the other, all but the first of whose visits
 * are kept provisionally, has the only time that is left before its visit.
 */
export async function twoCasesForOneTime(
  practice: Pick<BookingPractice, 'desk' | 'practice'>,
  rows: BookingPractice['rows'],
  now: Date,
): Promise<{ firm: CaseView; free: CaseView }> {
  const firm = await bookedCase(practice, { clinics: 1 });
  const opened = await openCaseOf(practice, { clinics: 1 });
  const { offers } = await askOffers(practice, opened.id);
  const free = await confirmOf(practice, await holdOf(practice, opened.id, found(offers[0])), 1);
  await rows((tx) => leaveOneTime(tx, { firm, free }, now));
  return { firm, free };
}

async function leaveOneTime(
  tx: EntityManager,
  { firm, free }: { firm: CaseView; free: CaseView },
  now: Date,
): Promise<void> {
  const stepOf = ({ id }: CaseView, code: string) => tx.findOneByOrFail(LabStep, { caseId: id, code });
  const late = await stepOf(firm, 'contour');
  const other = await stepOf(free, 'contour');
  const later = (at: Date | string) => new Date(new Date(at).getTime() + LATER_MS);
  const taken = await tx.findBy(Occupancy, { labStepId: late.id });
  const moved = taken.map(({ resourceId, startsAt, endsAt, purpose }) => ({
    ...{ resourceId, purpose, labStepId: late.id, startsAt: later(startsAt), endsAt: later(endsAt) },
  }));
  await claim(tx, moved, now, { labStepIds: [late.id] });
  const segments = late.segments.map((segment) => ({
    ...segment,
    ...{ startsAt: later(segment.startsAt).toISOString(), endsAt: later(segment.endsAt).toISOString() },
  }));
  const times = { startsAt: later(found(late.startsAt)), endsAt: later(found(late.endsAt)), segments };
  await tx.update(LabStep, { id: late.id }, { ...times, version: late.version + 1 });

  const purpose = 'busy' as const;
  const startsAt = found((await stepOf(firm, 'set-up')).endsAt);
  const [before, after] = [found(other.startsAt), found(other.endsAt)];
  const endsAt = new Date(before.getTime() + BUSY_MS);
  await claim(
    tx,
    [
      { purpose, resourceId: found(late.placeId), startsAt, endsAt },
      { purpose, resourceId: found(other.placeId), startsAt, endsAt: before },
      { purpose, resourceId: found(other.placeId), startsAt: after, endsAt },
    ],
    now,
  );
}
