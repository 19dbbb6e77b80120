import { seededRandom } from '@archwright/kernel';
import { OccupancyConflictError, claim, inOrganisation, type ClaimRequest } from '@archwright/records';
import { NOW, aCase, anAppointment, aPractice, at, nth, type TestCase, type TestPractice } from './records-practice.js';
import { openRecordsDatabase, type RecordsDatabase } from './records-database.js';

const BOOKERS = 50;
const ROUNDS = 4;
const VISITS = 5;
const SEED = 20270105;

let db: RecordsDatabase;
let practice: TestPractice;
let cases: readonly TestCase[];
beforeAll(async () => {
  db = await openRecordsDatabase(BOOKERS);
  practice = await aPractice(db.app, { chairs: 4, clinicians: 3, places: 3 });
  // Beforehand: the case number's counter would make the bookers queue, and nothing would be contended.
  const openers = Array.from({ length: BOOKERS * ROUNDS }, () =>
    inOrganisation(db.app, practice.organisationId, (tx) => aCase(tx, practice)),
  );
  cases = await Promise.all(openers);
}, 60_000);
afterAll(() => db.close());

/** Five visits, three days apart or so, with bench work after each, on few enough chairs and people that chains collide. */
function aChain(booker: number, round: number, patientId: string): { visits: ClaimRequest[][] } {
  const random = seededRandom(SEED, booker * ROUNDS + round);
  const pick = (ids: readonly string[]) => nth(ids, random.nextBelow(ids.length));
  const visits = Array.from({ length: VISITS }, (_, day) => {
    const startsAt = new Date(
      at('08:00', 3 * day + random.nextBelow(3)).getTime() + random.nextBelow(36) * 15 * 60_000,
    );
    const endsAt = new Date(startsAt.getTime() + 45 * 60_000);
    const benchEndsAt = new Date(endsAt.getTime() + 60 * 60_000);
    const time = { startsAt, endsAt, purpose: 'visit' as const };
    return [
      { ...time, resourceId: pick(practice.chairIds) },
      { ...time, resourceId: pick(practice.clinicianIds) },
      { ...time, resourceId: patientId },
      { resourceId: pick(practice.placeIds), startsAt: endsAt, endsAt: benchEndsAt, purpose: 'lab' as const },
    ];
  });
  // Bookers ask in different orders: without locks in one fixed order this deadlocks.
  return { visits: booker % 2 === 0 ? visits : visits.reverse() };
}

async function book(booker: number, round: number): Promise<'booked' | 'refused'> {
  try {
    await inOrganisation(db.app, practice.organisationId, async (tx) => {
      const { patientId } = nth(cases, booker * ROUNDS + round);
      const { visits } = aChain(booker, round, patientId);
      const requests: ClaimRequest[] = [];
      for (const visit of visits) {
        const [chair, clinician] = visit;
        if (chair === undefined || clinician === undefined) throw new Error('A visit has a chair and a clinician.');
        const { startsAt, endsAt } = chair;
        const appointmentId = await anAppointment(tx, practice, {
          patientId,
          startsAt,
          endsAt,
          chairId: chair.resourceId,
          clinicianId: clinician.resourceId,
        });
        requests.push(...visit.map((request) => ({ ...request, appointmentId })));
      }
      await claim(tx, requests, NOW);
    });
    return 'booked';
  } catch (error) {
    if (error instanceof OccupancyConflictError) return 'refused';
    throw error;
  }
}

describe('fifty bookers on the same chairs, people and bench places', () => {
  it('book whole chains without overlap, part of a chain, or a deadlock that anybody sees', async () => {
    const deadlocksBefore = await deadlocks();
    const outcomes: ('booked' | 'refused')[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const bookers = Array.from({ length: BOOKERS }, (_, booker) => book(booker, round));
      outcomes.push(...(await Promise.all(bookers)));
    }
    const booked = outcomes.filter((outcome) => outcome === 'booked').length;
    expect(outcomes).toHaveLength(BOOKERS * ROUNDS);
    // Some must get through and some must be refused, or nothing was contended.
    expect(booked).toBeGreaterThan(10);
    expect(booked).toBeLessThan(outcomes.length);

    const [overlaps]: { count: number }[] = await db.admin.query(`
      SELECT count(*)::integer AS count FROM occupancy a JOIN occupancy b
        ON a.organisation_id = b.organisation_id AND a.resource_id = b.resource_id AND a.id < b.id
        AND a.starts_at < b.ends_at AND a.ends_at > b.starts_at`);
    expect(overlaps).toEqual({ count: 0 });
    const chains: { visits: number; occupancies: number }[] = await db.admin.query(`
      SELECT count(DISTINCT a.id)::integer AS visits, count(o.id)::integer AS occupancies
      FROM treatment_case c LEFT JOIN appointment a ON a.patient_id = c.patient_id LEFT JOIN occupancy o ON o.appointment_id = a.id
      GROUP BY c.id ORDER BY visits DESC`);
    const whole = { visits: VISITS, occupancies: VISITS * 4 };
    const none = { visits: 0, occupancies: 0 };
    expect(chains).toEqual(outcomes.map((_, index) => (index < booked ? whole : none)));
    expect(await deadlocks()).toBe(deadlocksBefore);
  }, 120_000);

  it('number their cases without a gap', async () => {
    const numbers: { number: string }[] = await db.admin.query('SELECT number FROM treatment_case ORDER BY number');
    expect(numbers.map(({ number }) => number)).toEqual(
      numbers.map((_, index) => `27-${String(index + 1).padStart(4, '0')}`),
    );
  });
});

async function deadlocks(): Promise<number> {
  const [row]: { deadlocks: number }[] = await db.admin.query(
    'SELECT deadlocks::integer FROM pg_stat_database WHERE datname = current_database()',
  );
  if (row === undefined) throw new Error('The server keeps no statistics of this database.');
  return row.deadlocks;
}
