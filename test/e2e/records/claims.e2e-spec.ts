import {
  BatchFullError,
  Closure,
  Hold,
  HoldNotActiveError,
  Occupancy,
  OccupancyConflictError,
  OffGridError,
  Batch,
  blockTime,
  claim,
  confirmHeldTime,
  inOrganisation,
  joinBatch,
  leaveBatches,
  openBatch,
  release,
  uuidv7,
  type Work,
} from '@archwright/records';
import {
  NOW,
  aCase,
  aHold,
  aLabStep,
  aPractice,
  anAppointment,
  at,
  nth,
  type TestPractice,
} from './records-practice.js';
import { openRecordsDatabase, type RecordsDatabase } from './records-database.js';

let db: RecordsDatabase;
let practice: TestPractice;
let chair: string;
beforeAll(async () => {
  db = await openRecordsDatabase(24);
}, 60_000);
afterAll(() => db.close());
beforeEach(async () => {
  practice = await aPractice(db.app, { chairs: 2, places: 2 });
  chair = nth(practice.chairIds, 0);
});

const inside = <Result>(work: Work<Result>) => inOrganisation(db.app, practice.organisationId, work);
const visit = (resourceId: string, from: string, to: string) => ({
  resourceId,
  startsAt: at(from),
  endsAt: at(to),
  purpose: 'visit' as const,
});
const taken = async () => {
  const rows = await inside((tx) => tx.find(Occupancy, { order: { startsAt: 'ASC' } }));
  return rows.map(
    ({ startsAt, endsAt }) => `${startsAt.toISOString().slice(11, 16)}-${endsAt.toISOString().slice(11, 16)}`,
  );
};

describe('a claim', () => {
  it('takes all or nothing, and names what is taken', async () => {
    await inside((tx) => claim(tx, [visit(chair, '09:00', '10:00')], NOW));
    const second = nth(practice.chairIds, 1);
    const refusal = await inside((tx) =>
      claim(tx, [visit(second, '08:00', '09:00'), visit(chair, '09:55', '10:30')], NOW),
    ).catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(OccupancyConflictError);
    expect((refusal as OccupancyConflictError).conflicts).toEqual([
      {
        resourceId: chair,
        kind: 'chair',
        label: 'Chair 1',
        startsAt: at('09:00').toISOString(),
        endsAt: at('10:00').toISOString(),
      },
    ]);
    expect(await taken()).toEqual(['09:00-10:00']);
    await inside((tx) => claim(tx, [visit(chair, '10:00', '10:30'), visit(chair, '08:30', '09:00')], NOW));
    expect(await taken()).toEqual(['08:30-09:00', '09:00-10:00', '10:00-10:30']);
  });

  it('refuses a chain that wants one resource twice at once', async () => {
    const twice = [visit(chair, '09:00', '10:00'), visit(chair, '09:30', '10:30')];
    await expect(inside((tx) => claim(tx, twice, NOW))).rejects.toThrow(/chair "Chair 1" from 2027-01-05T09:00/);
  });

  it('leaves the transaction usable after a conflict', async () => {
    await inside((tx) => claim(tx, [visit(chair, '09:00', '10:00')], NOW));
    await inside(async (tx) => {
      await expect(claim(tx, [visit(chair, '09:00', '09:30')], NOW)).rejects.toThrow(OccupancyConflictError);
      await claim(tx, [visit(chair, '11:00', '11:30')], NOW);
    });
    expect(await taken()).toEqual(['09:00-10:00', '11:00-11:30']);
  });

  it.each([
    ['09:02', '10:00'],
    ['09:00', '09:00'],
    ['10:00', '09:00'],
  ])('refuses %s to %s: off the grid or not a length', async (from, to) => {
    await expect(inside((tx) => claim(tx, [visit(chair, from, to)], NOW))).rejects.toThrow(OffGridError);
  });

  it('moves a visit within its own place, and leaves it where it was when the new place is taken', async () => {
    const appointmentId = await inside(async (tx) => {
      const { patientId } = await aCase(tx, practice);
      const id = await anAppointment(tx, practice, { patientId, startsAt: at('09:00'), endsAt: at('10:00') });
      await claim(tx, [{ ...visit(chair, '09:00', '10:00'), appointmentId: id }], NOW);
      await claim(tx, [visit(chair, '11:00', '12:00')], NOW);
      return id;
    });
    const moveTo = (from: string, to: string) =>
      inside((tx) =>
        claim(tx, [{ ...visit(chair, from, to), appointmentId }], NOW, { appointmentIds: [appointmentId] }),
      );
    await moveTo('09:30', '10:30');
    expect(await taken()).toEqual(['09:30-10:30', '11:00-12:00']);
    await expect(moveTo('10:30', '11:30')).rejects.toThrow(OccupancyConflictError);
    expect(await taken()).toEqual(['09:30-10:30', '11:00-12:00']);
    await inside((tx) => release(tx, { appointmentIds: [appointmentId] }));
    expect(await taken()).toEqual(['11:00-12:00']);
  });
});

describe('the exclusion constraint', () => {
  it('refuses an overlap that goes past the claims', async () => {
    await inside((tx) => claim(tx, [visit(chair, '09:00', '10:00')], NOW));
    const around = inside((tx) => tx.insert(Occupancy, { id: uuidv7(), ...visit(chair, '09:30', '10:30') }));
    await expect(around).rejects.toThrow(/occupancy_one_at_a_time/);
  });

  it('is judged at the end of a transaction that asks for it, so that two visits can trade places', async () => {
    await inside((tx) => claim(tx, [visit(chair, '09:00', '10:00'), visit(chair, '10:00', '11:00')], NOW));
    await inside(async (tx) => {
      const [first, second] = await tx.find(Occupancy, { order: { startsAt: 'ASC' } });
      await tx.query('SET CONSTRAINTS occupancy_one_at_a_time DEFERRED');
      await tx.update(Occupancy, { id: first?.id }, { startsAt: at('10:00'), endsAt: at('11:00') });
      await tx.update(Occupancy, { id: second?.id }, { startsAt: at('09:00'), endsAt: at('10:00') });
    });
    expect(await taken()).toEqual(['09:00-10:00', '10:00-11:00']);
  });
});

describe('a hold', () => {
  const until = at('12:00', -1);
  const heldCase = () =>
    inside(async (tx) => {
      const { caseId, patientId } = await aCase(tx, practice);
      const holdId = await aHold(tx, caseId, until);
      const appointmentIds = [
        await anAppointment(tx, practice, { patientId, startsAt: at('09:00'), endsAt: at('10:00') }),
        await anAppointment(tx, practice, { patientId, startsAt: at('10:00'), endsAt: at('11:00') }),
      ];
      const hold = { id: holdId, until };
      await claim(
        tx,
        [
          { ...visit(chair, '09:00', '10:00'), appointmentId: nth(appointmentIds, 0), hold },
          { ...visit(chair, '10:00', '11:00'), appointmentId: nth(appointmentIds, 1), hold },
        ],
        NOW,
      );
      return { holdId, appointmentIds };
    });

  it('keeps others out until it runs out, then gives way as a whole', async () => {
    const { holdId } = await heldCase();
    const other = [visit(chair, '09:30', '10:00')];
    await expect(inside((tx) => claim(tx, other, new Date(until.getTime() - 1)))).rejects.toThrow(
      OccupancyConflictError,
    );
    await inside((tx) => claim(tx, other, until));
    await expect(inside((tx) => confirmHeldTime(tx, holdId, new Date(until.getTime() - 1)))).rejects.toThrow(
      new HoldNotActiveError(holdId, 'expired'),
    );
  });

  it('becomes firm in time, and not once it has run out', async () => {
    const { holdId } = await heldCase();
    await expect(inside((tx) => confirmHeldTime(tx, holdId, until))).rejects.toThrow(HoldNotActiveError);
    await inside((tx) => confirmHeldTime(tx, holdId, NOW));
    const rows = await inside((tx) => tx.find(Occupancy));
    expect(rows.map(({ heldUntil, holdId: by }) => [heldUntil, by])).toEqual([
      [null, null],
      [null, null],
    ]);
    await expect(inside((tx) => confirmHeldTime(tx, holdId, NOW))).rejects.toThrow(/is confirmed/);
  });

  it('becomes firm in part, the rest held on', async () => {
    const { holdId, appointmentIds } = await heldCase();
    const restUntil = at('08:00');
    const part = { appointmentIds: appointmentIds.slice(0, 1), labStepIds: [], restUntil };
    await inside((tx) => confirmHeldTime(tx, holdId, NOW, part));
    const rows = await inside((tx) => tx.find(Occupancy, { order: { startsAt: 'ASC' } }));
    expect(rows.map(({ heldUntil }) => heldUntil)).toEqual([null, restUntil]);
    const hold = await inside((tx) => tx.findOneByOrFail(Hold, { id: holdId }));
    expect(hold).toMatchObject({ state: 'active', kind: 'provisional', expiresAt: restUntil });
  });
});

describe('a closure', () => {
  it('blocks what is free, rounded outward, and reports the booked time that it falls on', async () => {
    const labStepId = await inside(async (tx) => {
      const { caseId } = await aCase(tx, practice);
      const id = await aLabStep(tx, practice, { caseId, code: 'wax', startsAt: at('10:00'), endsAt: at('11:00') });
      await claim(tx, [{ ...visit(chair, '10:00', '11:00'), labStepId: id }], NOW);
      return id;
    });
    const closureId = uuidv7();
    const block = (startsAt: Date, endsAt: Date) =>
      inside((tx) => blockTime(tx, [{ resourceId: chair, closureId, startsAt, endsAt, purpose: 'absence' }], NOW));
    await inside((tx) =>
      tx.insert(Closure, {
        id: closureId,
        resourceId: chair,
        startsAt: at('09:02'),
        endsAt: at('12:01'),
        reason: 'ill',
      }),
    );
    expect(await block(at('09:02'), at('12:01'))).toEqual([
      { closureId, resourceId: chair, startsAt: at('10:00'), endsAt: at('11:00'), appointmentId: null, labStepId },
    ]);
    expect(await taken()).toEqual(['09:00-10:00', '10:00-11:00', '11:00-12:05']);
    expect(await block(at('11:30'), at('11:45'))).toEqual([]);
    expect(await taken()).toEqual(['10:00-11:00', '11:30-11:45']);
  });

  it('shares overlapping time between closures, whatever their order, and covers all of it once', async () => {
    await inside((tx) => claim(tx, [visit(chair, '10:00', '10:30')], NOW));
    const other = nth(practice.chairIds, 1);
    const times = [
      [chair, '11:00', '12:00'],
      [chair, '09:00', '11:30'],
      [other, '09:30', '09:45'],
      [chair, '09:30', '10:15'],
      [chair, '13:00', '14:00'],
    ] as const;
    const requests = times.map(([resourceId, from, to]) => ({
      resourceId,
      startsAt: at(from),
      endsAt: at(to),
      purpose: 'busy' as const,
      closureId: uuidv7(),
    }));
    await inside(async (tx) => {
      for (const { resourceId, startsAt, endsAt, closureId } of requests)
        await tx.insert(Closure, { id: closureId, resourceId, startsAt, endsAt, reason: 'busy' });
    });
    const collisions = await inside((tx) => blockTime(tx, requests, NOW));
    expect(collisions.map(({ closureId }) => closureId)).toEqual([
      nth(requests, 1).closureId,
      nth(requests, 3).closureId,
    ]);
    expect(await taken()).toEqual([
      '09:00-10:00',
      '09:30-09:45',
      '10:00-10:30',
      '10:30-11:30',
      '11:30-12:00',
      '13:00-14:00',
    ]);
  });
});

describe('a batch', () => {
  it('takes no more than its size from 20 joiners at once', async () => {
    const place = nth(practice.placeIds, 0);
    const run = { placeId: place, kind: 'curing-cycle' as const, startsAt: at('14:00'), endsAt: at('22:00'), size: 6 };
    const { batchId, labStepIds } = await inside(async (tx) => {
      const { caseId } = await aCase(tx, practice);
      const ids: string[] = [];
      for (let number = 0; number < 20; number++) {
        ids.push(
          await aLabStep(tx, practice, {
            caseId,
            code: `cure-${String(number)}`,
            startsAt: at('14:00'),
            endsAt: at('22:00'),
          }),
        );
      }
      return { batchId: await openBatch(tx, run, NOW), labStepIds: ids };
    });
    const joined = await Promise.allSettled(
      labStepIds.map((labStepId) => inside((tx) => joinBatch(tx, { batchId, labStepId, units: 1 }))),
    );
    const refused = joined.filter((each) => each.status === 'rejected').map((each): unknown => each.reason);
    expect(refused).toHaveLength(14);
    for (const reason of refused) expect(reason).toBeInstanceOf(BatchFullError);
    const members: { count: number }[] = await inside((tx) =>
      tx.query('SELECT count(*)::integer AS count FROM batch_member'),
    );
    expect(members).toEqual([{ count: 6 }]);
    expect(await inside((tx) => tx.find(Batch))).toMatchObject([{ used: 6, size: 6 }]);
    await expect(inside((tx) => claim(tx, [visit(place, '21:00', '22:00')], NOW))).rejects.toThrow(
      OccupancyConflictError,
    );
    await inside((tx) => leaveBatches(tx, labStepIds));
    expect(await inside((tx) => tx.find(Batch))).toEqual([]);
    await inside((tx) => claim(tx, [visit(place, '21:00', '22:00')], NOW));
  }, 30_000);
});
