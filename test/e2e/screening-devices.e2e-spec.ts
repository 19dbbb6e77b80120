import {
  screeningFindingPage,
  setupEntry,
  type ScreeningFindingView,
  type SetupEntry,
  type StageView,
} from '@archwright/contracts';
import { Capture, StageValue, UserAccount } from '@archwright/records';
import { writeMeasured } from '../support/measured-patients.js';
import { NOW, bookedCase, found, openBookingPractice, type BookingPractice } from './booking-practice.js';
import { Chairside, refusal } from './capture-chairside.js';

const LONG_MS = 180_000;
const DAY_MS = 86_400_000;
const LENGTH = { code: 'vertical-dimension-at-rest', value: 68, method: { landmarks: 'subnasale-gnathion' } };
const SPEECH = { code: 'closest-speaking-space', unit: 'mm', method: null };

/**
 * Work of one bench, two years back: of the first hundred pieces five went back, of the last thirty fifteen. What went back
 * was discarded by a remake within the month.
 */
const RISING_BENCH = `
  WITH bench AS (SELECT w.id, w.laboratory_id, w.code FROM work_centre w ORDER BY w.name LIMIT 1),
  treated AS (
    SELECT c.id, g.id AS stage, row_number() OVER (ORDER BY c.number) AS place,
      row_number() OVER (ORDER BY c.number) <= 5 OR row_number() OVER (ORDER BY c.number) > 115 AS back
    FROM treatment_case c JOIN stage g ON g.case_id = c.id WHERE c.number LIKE '90-%' ORDER BY place LIMIT 130),
  made AS (
    INSERT INTO lab_step (id, case_id, code, arches, phase, after_stage, before_stage, laboratory_id, work_centre_id,
      starts_at, ends_at, segments, state, finished_at)
    SELECT gen_random_uuid(), t.id, 'wax-up', '{upper}', 'p', 'V2', 'V3', bench.laboratory_id, bench.id, at, at + interval '1 hour',
      '[]', CASE WHEN back THEN 'discarded' ELSE 'finished' END, at
    FROM treated t CROSS JOIN bench CROSS JOIN LATERAL (
      SELECT CASE WHEN place <= 100 THEN timestamptz '2026-01-05T09:00Z' + place * interval '2 days'
        ELSE timestamptz '2026-09-10T09:00Z' + (place - 100) * interval '2 days' END AS at) made)
  INSERT INTO remake_alert (id, case_id, stage_id, trigger, reason, return_to_stage, arches, discards, state, raised_at)
  SELECT gen_random_uuid(), t.id, t.stage, 'test', 'A test of rises.', 'V2', '{upper}', '{}', 'accepted',
    CASE WHEN place <= 100 THEN timestamptz '2026-01-15T09:00Z' + place * interval '2 days'
      ELSE timestamptz '2026-09-20T09:00Z' + (place - 100) * interval '2 days' END
  FROM treated t WHERE back`;

describe('devices and benches', () => {
  let practice: BookingPractice;
  let chair: Chairside;
  let clinicId: string;
  let stage: StageView;
  let caliper: SetupEntry;

  const add = async (name: string, measures: string, at = clinicId) =>
    (await practice.signIn('admin')).call({
      method: 'POST',
      path: '/setup/records',
      body: { kind: 'device', clinicId: at, name, measures },
      answer: setupEntry,
    });
  const retire = async ({ id, version }: SetupEntry) =>
    (await practice.signIn('admin')).call({
      method: 'PUT',
      path: `/setup/records/${id}/retirement`,
      version,
      body: { isRetired: true },
      answer: setupEntry,
    });
  /** Of the devices of this test. */
  const offered = async () =>
    (await chair.view(stage.id)).devices
      .map(({ name, isLastUsed }) => [name, isLastUsed])
      .filter(([name]) => ['Blue caliper', 'Tracing plates', 'Worn caliper'].includes(String(name)));
  const taken = async (...deviceIds: string[]) =>
    chair.capture(await chair.view(stage.id), { readings: [LENGTH], deviceIds });

  beforeAll(async () => {
    practice = await openBookingPractice();
    chair = await Chairside.at(practice, NOW);
    const opened = await bookedCase(practice, { path: 'digital-printed-bases', clinics: 1 });
    stage = await chair.begin(opened.id, 'D1');
    clinicId = found(opened.clinicIds[0]);
  }, LONG_MS);
  afterAll(async () => {
    await practice.close();
  });

  it('are named by the practice, each name once at a clinic', async () => {
    expect(await offered()).toEqual([]);
    caliper = await add('Blue caliper', 'lengths');
    await add('Tracing plates', 'tracings');
    expect((await refusal(add('Blue caliper', 'angles'))).status).toBe(422);
    expect(await offered()).toEqual([
      ['Blue caliper', false],
      ['Tracing plates', false],
    ]);
  });

  it('are kept with what was taken with them, and offered again at the same chair', async () => {
    stage = await taken(caliper.id);
    expect(await offered()).toEqual([
      ['Blue caliper', true],
      ['Tracing plates', false],
    ]);
    const values = await practice.rows((tx) => tx.findBy(StageValue, { stageId: stage.id }));
    expect(values.map(({ code, deviceId }) => [code, deviceId])).toEqual([[LENGTH.code, caliper.id]]);
    // A capture without any does not make the chair forget.
    stage = await taken();
    expect((await offered())[0]).toEqual(['Blue caliper', true]);
  });

  it('are refused from elsewhere, out of use, or two for the same readings; then nothing is kept', async () => {
    const count = () => practice.rows((tx) => tx.countBy(Capture, { stageId: stage.id }));
    const before = await count();
    const other = found(practice.practice.clinics.find(({ id }) => id !== clinicId));
    const elsewhere = await add('Far caliper', 'lengths', other.id);
    const second = await add('Red caliper', 'lengths');
    const old = await retire(await add('Worn caliper', 'lengths'));
    for (const ids of [[elsewhere.id], [old.id], [caliper.id, second.id]]) {
      const refused = await refusal(taken(...ids));
      expect([refused.status, refused.problem.errors?.[0]?.path]).toEqual([400, `deviceIds.${String(ids.length - 1)}`]);
    }
    expect(await count()).toBe(before);
    expect((await offered()).map(([name]) => name)).not.toContain('Worn caliper');
  });

  describe('at night', () => {
    const night = (on: number) => chair.night(new Date(NOW.getTime() + on * DAY_MS));
    const listed = async (who: string): Promise<ScreeningFindingView[]> => {
      const session = await practice.signIn(who);
      const path = '/screening-findings?seen=no';
      return (await session.call({ method: 'GET', path, answer: screeningFindingPage })).items;
    };

    it('a device whose readings drift is told to its clinic, when three people used it', async () => {
      const people = await practice.rows((tx) => tx.find(UserAccount, { order: { id: 'ASC' }, take: 3 }));
      const values = Array.from({ length: 23 }, (_, at) => (at < 18 ? 2 : 5) + (((at * 7) % 9) - 4) / 2);
      for (const [index, { id: recordedBy }] of people.entries()) {
        const from = new Date(NOW.getTime() - 4 * DAY_MS + index * 1_200_000);
        const series = { ...SPEECH, clinicId, recordedBy, values, from, firstNumber: 2000 + 100 * index };
        await practice.rows((tx) => writeMeasured(tx, { ...series, deviceId: caliper.id }));
      }
      await night(1);
      const drifts = (await listed('manager')).filter(({ kind }) => kind === 'drift');
      expect(drifts.map(({ comparedWith }) => comparedWith).sort()).toEqual(['clinic-series', 'device-series']);
      const drift = found(drifts.find(({ comparedWith }) => comparedWith === 'device-series'));
      expect(drift).toMatchObject({ deviceName: 'Blue caliper', caseId: null, code: SPEECH.code });
      expect(drift.sentence).toMatch(/since 2027-01-0\d the readings with "Blue caliper" lie about/);
    });

    it('a bench whose work goes back more often is told to managers once', async () => {
      const many = { ...SPEECH, code: 'interalar-width', clinicId, values: Array.from({ length: 130 }, () => 36) };
      const [someone] = await practice.rows((tx) => tx.find(UserAccount, { take: 1 }));
      const from = new Date(NOW.getTime() - 9 * DAY_MS);
      await practice.rows(async (tx) => {
        await writeMeasured(tx, { ...many, recordedBy: found(someone).id, from, firstNumber: 0 });
        await tx.query(RISING_BENCH);
      });
      await night(2);
      const shares = (await listed('manager')).filter(({ kind }) => kind === 'share');
      expect(shares.map(({ comparedWith }) => comparedWith).sort()).toEqual([
        'laboratory-series',
        'work-centre-series',
      ]);
      const bench = found(shares.find(({ comparedWith }) => comparedWith === 'work-centre-series'));
      expect(bench.workCentreName).not.toBeNull();
      expect(bench.sentence).toContain(
        'of 30 pieces of work of three months 15 went back within 30 days (50.0 %); before it was 5.0 %, 5 of 100.',
      );
      expect((await listed('chair')).filter(({ kind }) => kind === 'share')).toEqual([]);
      await night(30);
      expect((await listed('manager')).filter(({ kind }) => kind === 'share')).toHaveLength(2);
    });
  });
});
