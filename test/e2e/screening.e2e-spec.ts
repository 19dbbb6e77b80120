import { screenCapture, sweep } from '@archwright/casework';
import {
  auditPage,
  screeningFindingPage,
  screeningFindingView,
  type ScreeningFindingView,
  type StageView,
} from '@archwright/contracts';
import {
  Capture,
  Measurement,
  ScreeningFinding,
  ScreeningNight,
  TreatmentCase,
  UserAccount,
} from '@archwright/records';
import type { ApiSession } from '../../apps/cli/src/demo/api-session.js';
import { writeMeasured, writeTogether } from '../support/measured-patients.js';
import { NOW, bookedCase, found, openBookingPractice, type BookingPractice } from './booking-practice.js';
import { Chairside, refusal } from './capture-chairside.js';

const LONG_MS = 180_000;
const DAY_MS = 86_400_000;
const REST = { code: 'vertical-dimension-at-rest', unit: 'mm', method: { landmarks: 'subnasale-gnathion' } };
const DEPTH = { code: 'closest-speaking-space', unit: 'mm', method: null };

/** Whole and half millimetres about a middle, in an order without a trend. */
const about = (middle: number, count: number): number[] =>
  Array.from({ length: count }, (_, at) => middle + (((at * 7) % 9) - 4) / 2);

/** A hundred cases of last month: two of sixty went back to the first laboratory, twenty of forty to a new one. */
const TWO_LABORATORIES = `
  WITH own AS (SELECT l.id AS laboratory, w.id AS centre FROM laboratory l JOIN work_centre w ON w.laboratory_id = l.id LIMIT 1),
  other AS (
    INSERT INTO laboratory (id, name, zone, cut_off_local, closed_weekdays)
    VALUES (gen_random_uuid(), $1, 'Europe/London', '16:00', '{6,7}') RETURNING id),
  bench AS (
    INSERT INTO work_centre (id, laboratory_id, code, name)
    SELECT gen_random_uuid(), id, 'wax', 'Wax' FROM other RETURNING id, laboratory_id),
  treated AS (
    SELECT c.id, g.id AS stage, row_number() OVER (ORDER BY c.number) AS place
    FROM treatment_case c JOIN stage g ON g.case_id = c.id WHERE c.number LIKE '90-%'
    ORDER BY place LIMIT 100),
  made AS (
    INSERT INTO lab_step (id, case_id, code, arches, phase, after_stage, before_stage, laboratory_id, work_centre_id,
      starts_at, ends_at, segments, state, finished_at)
    SELECT gen_random_uuid(), t.id, 'wax-up', '{upper}', 'p', 'V2', 'V3',
      CASE WHEN t.place <= 60 THEN own.laboratory ELSE bench.laboratory_id END,
      CASE WHEN t.place <= 60 THEN own.centre ELSE bench.id END,
      '2026-12-01T09:00Z', '2026-12-01T10:00Z', '[]', 'finished', '2026-12-01T10:00Z'
    FROM treated t CROSS JOIN own CROSS JOIN bench)
  INSERT INTO remake_alert (id, case_id, stage_id, trigger, reason, return_to_stage, arches, discards, state, raised_at)
  SELECT gen_random_uuid(), t.id, t.stage, 'test', 'A test of shares.', 'V2', '{upper}', '{}', 'accepted', '2026-12-10T09:00Z'
  FROM treated t WHERE t.place <= 2 OR t.place > 80`;

describe('screening', () => {
  let practice: BookingPractice;
  let chair: Chairside;
  let clinicId: string;
  let stage: StageView;
  let people: { clinician: string; desk: string };

  beforeAll(async () => {
    practice = await openBookingPractice();
    chair = await Chairside.at(practice, NOW);
    const opened = await bookedCase(practice, { path: 'digital-printed-bases', clinics: 1 });
    stage = await chair.begin(opened.id, 'D1');
    clinicId = found(opened.clinicIds[0]);
    people = await practice.rows(async (tx) => {
      const idOf = async (mail: string) => (await tx.findOneByOrFail(UserAccount, { mail })).id;
      return { clinician: await idOf('chair@example.test'), desk: await idOf('desk@example.test') };
    });
  }, LONG_MS);
  afterAll(async () => {
    await practice.close();
  });

  const listed = async (session: ApiSession, query = ''): Promise<ScreeningFindingView[]> => {
    const answer = screeningFindingPage;
    return (await session.call({ method: 'GET', path: `/screening-findings${query}`, answer })).items;
  };
  const rest = (value: number) => ({ readings: [{ code: 'VDR', value, method: REST.method }] });

  it('says nothing while there are too few to compare with', async () => {
    stage = await chair.capture(stage, rest(92));
    expect(stage.checking).toBe(false);
    const captures = await practice.rows((tx) => tx.findBy(Capture, { stageId: stage.id }));
    expect(captures.map(({ screenedAt }) => screenedAt !== null)).toEqual([true]);
    expect(await listed(chair.clinician)).toEqual([]);
  });

  it('points out a value that the clinic’s others are far from, with the size of the group', async () => {
    const from = new Date(NOW.getTime() - 60 * DAY_MS);
    const measured = { ...REST, clinicId, recordedBy: people.clinician, values: about(68, 30), from, firstNumber: 1 };
    await practice.rows((tx) => writeMeasured(tx, measured));
    stage = await chair.capture(stage, rest(93));
    const [finding, ...more] = await listed(chair.clinician, `?stageId=${stage.id}`);
    expect(more).toEqual([]);
    expect(finding).toMatchObject({
      kind: 'value',
      comparedWith: 'clinic',
      groupSize: 30,
      caseId: stage.caseId,
      seenAt: null,
      evidence: { valuesPerAlarm: 1000, outcomes: [{ group: 'clinic', outcome: 'stands-out', median: 68 }] },
    });
    expect(finding?.sentence).toBe(
      'Vertical dimension at rest 93 mm: 30 last values of other patients of this clinic lie about 68 mm, ' +
        'usual spread 1.48 mm.',
    );
  });

  it('changes nothing at the stage', async () => {
    const { gates, verdicts, alertId } = await chair.view(stage.id);
    expect(alertId).toBeNull();
    expect(gates.flatMap(({ missing }) => missing).join()).not.toMatch(/screen|stands out/i);
    expect(verdicts.every(({ verdict }) => verdict !== 'fail')).toBe(true);
  });

  it('finds the same once, however often the job runs', async () => {
    const before = await practice.rows((tx) => tx.count(ScreeningFinding));
    const again = await practice.rows(async (tx) => {
      const captures = await tx.findBy(Capture, { stageId: stage.id });
      await tx.update(Capture, { stageId: stage.id }, { screenedAt: null });
      return captures;
    });
    for (const { id } of again) {
      const payload = { organisationId: practice.organisationId, captureId: id };
      await Promise.all([1, 2].map(() => practice.rows((tx) => screenCapture(tx, payload, chair.now))));
    }
    expect(await practice.rows((tx) => tx.count(ScreeningFinding))).toBe(before);
  });

  it('makes a screening anew that the queue has lost', async () => {
    await practice.rows((tx) => tx.update(Capture, { stageId: stage.id }, { screenedAt: null }));
    await practice.rows((tx) => tx.query(`DELETE FROM outbox WHERE kind = 'screen-capture'`));
    const db = await practice.rows((tx) => Promise.resolve(tx.dataSource));
    const { recreated } = await sweep(db, practice.organisationId, new Date(chair.now.getTime() + 120_000));
    expect(recreated).toBe(1);
    chair.now = new Date(chair.now.getTime() + 180_000);
    await chair.runJobs();
    const left = await practice.rows((tx) =>
      tx.query<unknown[]>('SELECT FROM capture WHERE screened_at IS NULL AND superseded_at IS NULL'),
    );
    expect(left).toEqual([]);
  });

  it('is seen once, by a person, on what was shown', async () => {
    const [finding] = await listed(chair.clinician, '?seen=no');
    const { id, version } = found(finding);
    const path = `/screening-findings/${id}/seen`;
    const see = (session: ApiSession, seen?: number) =>
      session.call({
        method: 'PUT',
        path,
        answer: screeningFindingView,
        ...(seen === undefined ? {} : { version: seen }),
      });
    expect((await refusal(see(chair.clinician))).status).toBe(428);
    expect((await refusal(see(chair.clinician, version + 1))).status).toBe(412);
    expect((await refusal(see(chair.desk, version))).status).toBe(403);
    expect(await see(chair.clinician, version)).toMatchObject({ seenBy: 'Dr Imogen Thorne-Example' });
    expect((await refusal(see(chair.clinician, version + 1))).status).toBe(409);
    expect(await listed(chair.clinician, '?seen=no')).toEqual([]);
    expect(await listed(chair.clinician, '?seen=yes')).toHaveLength(1);
  });

  it('is found in the trail by its case', async () => {
    const manager = await practice.signIn('manager');
    const { number } = await practice.rows((tx) => tx.findOneByOrFail(TreatmentCase, { id: stage.caseId }));
    const path = `/audit-entries?caseNumber=${number}&action=see-finding`;
    const { items } = await manager.call({ method: 'GET', path, answer: auditPage });
    expect(items).toMatchObject([{ subjectKind: 'screening-finding', caseId: stage.caseId, caseNumber: number }]);
  });

  it('goes with the value that was taken again', async () => {
    stage = await chair.capture(await chair.view(stage.id), rest(68));
    expect(await listed(chair.clinician, `?stageId=${stage.id}`)).toEqual([]);
  });

  it('points out what was worked out from readings that are ordinary by themselves, and nobody typed it', async () => {
    const code = 'interocclusal-rest-distance';
    const from = new Date(NOW.getTime() - 50 * DAY_MS);
    const others = { ...REST, code, clinicId, recordedBy: people.clinician, values: about(3, 30), from };
    await practice.rows((tx) => writeMeasured(tx, { ...others, firstNumber: 500 }));
    const occlusal = (value: number) => ({ code: 'OVD', value, method: REST.method });
    const both = { readings: [...rest(68).readings, occlusal(56)] };
    stage = await chair.capture(await chair.view(stage.id), both);
    const [finding, ...more] = await listed(chair.clinician, `?stageId=${stage.id}`);
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ kind: 'value', comparedWith: 'clinic', code, groupSize: 30 });
    expect(finding?.sentence).toMatch(/^Interocclusal rest distance 12 mm: 30 last values .* lie about 3 mm/);
    expect(await practice.rows((tx) => tx.countBy(Measurement, { code }))).toBe(0);
    // The rest is not measured again, so that the capture still counts; the value worked out from it does not.
    stage = await chair.capture(await chair.view(stage.id), { readings: [occlusal(65)] });
    expect(await listed(chair.clinician, `?stageId=${stage.id}`)).toEqual([]);
  });

  it('points out widths that are ordinary by themselves and rare together, and which of them fits least', async () => {
    const from = new Date(NOW.getTime() - 40 * DAY_MS);
    const of = { clinicId, recordedBy: people.clinician, from, firstNumber: 3000 };
    // Two widths of sixty faces: the second follows the first, with half a millimetre of its own.
    const first = Array.from({ length: 60 }, (_, at) => 35 + (((at * 7) % 11) - 5) / 2);
    const second = first.map((width, at) => width - 6 + (((at * 5) % 3) - 1) / 2);
    await practice.rows((tx) => writeTogether(tx, of, { 'interalar-width': first, 'inner-canthal-width': second }));
    const widths = (interalar: number, canthal: number) => ({
      readings: [
        { code: 'IAW', value: interalar },
        { code: 'ICW', value: canthal },
      ],
    });
    stage = await chair.capture(await chair.view(stage.id), widths(36, 30));
    expect(await listed(chair.clinician, `?stageId=${stage.id}`)).toEqual([]);
    stage = await chair.capture(await chair.view(stage.id), widths(37, 27));
    const [finding, ...more] = await listed(chair.clinician, `?stageId=${stage.id}`);
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ kind: 'value', comparedWith: 'organisation', groupSize: 60 });
    expect(finding?.sentence).toMatch(
      /^Widths of the face: interalar width 37 mm, inner canthal width 27 mm are ordinary by themselves and rare together/,
    );
    stage = await chair.capture(await chair.view(stage.id), widths(37, 31));
    expect(await listed(chair.clinician, `?stageId=${stage.id}`)).toEqual([]);
  });

  describe('at night', () => {
    const night = (on: number) => chair.night(new Date(NOW.getTime() + on * DAY_MS));

    it('shows a person’s drifting readings to that person alone', async () => {
      const from = new Date(NOW.getTime() - 4 * DAY_MS);
      const values = [...about(2, 60), ...about(5, 15)];
      const series = { ...DEPTH, clinicId, recordedBy: people.clinician, values, from, firstNumber: 1000 };
      await practice.rows((tx) => writeMeasured(tx, series));
      await night(1);
      const [drift, ...more] = await listed(chair.clinician, '?seen=no');
      expect(more).toEqual([]);
      expect(drift).toMatchObject({ kind: 'drift', comparedWith: 'own-series', code: DEPTH.code, caseId: null });
      expect(drift?.sentence).toMatch(
        /since 2027-01-02 your readings lie about 4.5 mm \(5 values\); the 40 .* lie about 2 mm/,
      );
      const manager = await practice.signIn('manager');
      const admin = await practice.signIn('admin');
      expect((await listed(manager)).filter(({ kind }) => kind === 'drift')).toEqual([]);
      expect((await listed(admin)).filter(({ kind }) => kind === 'drift')).toEqual([]);
      const path = `/screening-findings/${found(drift).id}/seen`;
      const seen = manager.call({ method: 'PUT', path, version: 1, answer: screeningFindingView });
      expect((await refusal(seen)).status).toBe(404);
    });

    it('tells managers of a laboratory whose cases go back more often, once a month', async () => {
      await practice.rows((tx) => tx.query(TWO_LABORATORIES, ['Second bench']));
      await night(2);
      const shares = async (who: string) =>
        (await listed(await practice.signIn(who))).filter(({ kind }) => kind === 'share');
      const [share, ...more] = await shares('manager');
      expect(more).toEqual([]);
      expect(share).toMatchObject({
        comparedWith: 'laboratories',
        groupSize: 2,
        laboratoryName: 'Second bench',
        evidence: { events: 20, size: 40 },
      });
      expect(share?.sentence).toContain('20 of 40 cases went back in twelve months; over 2 laboratories it is 22.0 %.');
      expect(await shares('chair')).toEqual([]);
      await night(3);
      expect(await shares('manager')).toHaveLength(1);
    });

    it('looks once a night, and finds nothing twice', async () => {
      const count = () => practice.rows((tx) => tx.count(ScreeningFinding));
      const before = await count();
      await night(4);
      await night(4);
      expect(await count()).toBe(before);
      const nights = await practice.rows((tx) => tx.find(ScreeningNight, { order: { nightOn: 'ASC' } }));
      expect(nights.slice(-2).map(({ nightOn }) => nightOn)).toEqual(['2027-01-07', '2027-01-08']);
      expect(nights.every(({ finishedAt }) => finishedAt !== null)).toBe(true);
    });
  });
});
