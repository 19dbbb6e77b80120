import {
  checkFigures,
  createPatient,
  measurementRangesView,
  patientView,
  verdictHistory,
  type StageView,
} from '@archwright/contracts';
import { sweep } from '@archwright/casework';
import { Capture, CheckEdition, CheckVerdict, FindingPause, GateOverride, uuidv7 } from '@archwright/records';
import { IsNull } from 'typeorm';
import { NOW, bookedCase, found, openBookingPractice, type BookingPractice } from './booking-practice.js';
import { Chairside, answers } from './capture-chairside.js';

const LONG_MS = 180_000;
const SIBILANTS = { rule: 'sibilant-contact/sibilant-test', supersededAt: IsNull() };
const REASON = 'Heard once, gone after the second sentence.';

describe('checks judged again', () => {
  let practice: BookingPractice;
  let chair: Chairside;
  let caseId: string;
  let stage: StageView;

  beforeAll(async () => {
    practice = await openBookingPractice();
    chair = await Chairside.at(practice, NOW);
    caseId = (await bookedCase(practice, { path: 'digital-printed-bases' })).id;
    await chair.consent(caseId);
    const examined = await chair.begin(caseId, 'D1');
    const width = { code: 'CIW', value: 9.5, method: { object: 'old-denture' } };
    const lip = { code: 'LIPL', value: 23 };
    await chair.capture(examined, { readings: [...answers(examined), width, lip] });
    await chair.passVisitUnderWay(caseId, 'D1');
    await chair.makeLabWork(caseId, 'D1');
    const touching = await chair.captureAll(await chair.begin(caseId, 'D2'), { 'sibilant-test': 'contact' });
    await chair.override(touching, 'record-complete', REASON);
    await chair.sign(touching);
    stage = await chair.complete(touching, 'passed');
    await judgeAgain();
  }, LONG_MS);
  afterAll(async () => {
    await practice.close();
  });

  async function judgeAgain(): Promise<CheckEdition[]> {
    const db = await practice.rows((tx) => Promise.resolve(tx.dataSource));
    await sweep(db, practice.organisationId, chair.now);
    await chair.runJobs();
    return practice.rows((tx) => tx.find(CheckEdition, { order: { id: 'DESC' } }));
  }

  /** As if a rule had spoken otherwise before the service was brought up to date. */
  async function judgedByAnOlderRule(verdict: 'pass' | 'fail'): Promise<void> {
    await practice.rows(async (tx) => {
      await tx.update(
        CheckVerdict,
        { stageId: stage.id, ...SIBILANTS },
        { verdict, ruleVersion: '0', reason: 'Older.' },
      );
      await tx.query('UPDATE check_edition SET fingerprint = id::text');
    });
  }

  it('changes nothing while rules and ranges are the same', async () => {
    const [edition] = await judgeAgain();
    expect(edition).toMatchObject({ stagesJudged: 2, verdictsChanged: 0 });
    expect(await judgeAgain()).toHaveLength(1);
  });

  it('follows a practice’s range, and keeps what was said before', async () => {
    const manager = await practice.signIn('manager');
    const body = { usual: { CIW: { min: 8, max: 9 } }, limits: {}, reason: 'Narrower teeth in our region.' };
    const path = '/measurement-ranges';
    await manager.call({ method: 'PUT', path, version: 1, body, answer: measurementRangesView });
    const [edition] = await judgeAgain();
    expect(edition).toMatchObject({ verdictsChanged: 1 });

    const examined = await chair.stage(caseId, 'D1');
    expect(examined.state).toBe('passed');
    const answer = verdictHistory;
    const { items } = await chair.clinician.call({
      method: 'GET',
      path: `/stages/${examined.id}/verdict-history`,
      answer,
    });
    const own = items.filter(({ about }) => about.includes('central-incisor-width'));
    expect(
      own.slice(0, 2).map(({ verdict, ruleVersion, supersededAt }) => [verdict, ruleVersion, supersededAt === null]),
    ).toEqual([
      ['caution', '1+p2', true],
      ['pass', '1', false],
    ]);
  });

  it('leaves a finding alone that a clinician has set aside, whatever the newer rule says of it', async () => {
    await judgedByAnOlderRule('fail');
    const [edition] = await judgeAgain();
    expect(edition).toMatchObject({ verdictsChanged: 1 });
    const again = await chair.view(stage.id);
    expect(again).toMatchObject({ state: 'passed' });
    expect(again.verdicts.find(({ rule }) => rule === 'sibilant-contact')).toMatchObject({ verdict: 'fail' });
    expect(await practice.rows((tx) => tx.countBy(FindingPause, { caseId }))).toBe(0);
    const [kept] = await practice.rows((tx) => tx.findBy(GateOverride, { stageId: stage.id }));
    expect(kept).toMatchObject({ reason: REASON, rules: ['sibilant-contact'] });
  });

  it('does not wait for the check of what was taken again before it was checked', async () => {
    await practice.rows(async (tx) => {
      const last = found(await tx.findOne(Capture, { where: { stageId: stage.id }, order: { id: 'DESC' } }));
      const recordedAt = new Date(last.recordedAt.getTime() - 1000);
      const { stageId, clinicId, otherCentricRelation, recordedBy, recordedAt: supersededAt } = last;
      const again = { stageId, clinicId, otherCentricRelation, recordedBy, supersededAt };
      await tx.insert(Capture, { ...again, id: uuidv7(), recordedAt, checkedAt: null });
    });
    await judgedByAnOlderRule('fail');
    const [edition] = await judgeAgain();
    expect(edition).toMatchObject({ verdictsChanged: 1 });
  });

  it('asks about what fails only now, and undoes no visit', async () => {
    await judgedByAnOlderRule('pass');
    await judgeAgain();
    expect((await chair.view(stage.id)).state).toBe('passed');
    const pauses = await practice.rows((tx) => tx.findBy(FindingPause, { caseId }));
    expect(pauses).toMatchObject([{ state: 'open', pointOfNoReturn: 'print-final' }]);
    const late = await chair.view(stage.id);
    await chair.override(late, 'late-finding', REASON);
    await judgeAgain();
    expect(await practice.rows((tx) => tx.countBy(FindingPause, { caseId, state: 'open' }))).toBe(0);
  });

  it('follows what is said of the patient later: the published range of a lip differs by sex', async () => {
    const examined = await chair.stage(caseId, 'D1');
    const ofLip = async () =>
      (await chair.view(examined.id)).verdicts.find(({ reason }) => reason.includes('lip length'));
    expect(await ofLip()).toMatchObject({ verdict: 'pass' });
    const { patient } = await chair.state(caseId);
    const path = `/patients/${patient.id}`;
    const seen = await chair.desk.call({ method: 'GET', path, answer: patientView });
    const { version } = seen;
    const body = { ...createPatient.strip().parse(seen), sex: 'female' };
    await chair.desk.call({ method: 'PUT', path, version, body, answer: patientView });
    expect(await ofLip()).toMatchObject({ verdict: 'caution' });
    expect((await chair.view(examined.id)).state).toBe('passed');
    await chair.desk.call({
      method: 'PUT',
      path,
      version: version + 1,
      body: { ...body, sex: 'male' },
      answer: patientView,
    });
    expect(await ofLip()).toMatchObject({ verdict: 'pass' });
  });

  it('counts what was set aside per rule and never per person', async () => {
    const path = '/check-figures';
    const { items } = await chair.clinician.call({ method: 'GET', path, answer: checkFigures });
    expect(found(items.find(({ rule }) => rule === 'sibilant-contact'))).toEqual({
      rule: 'sibilant-contact',
      name: 'Contact in sibilants',
      version: 1,
      stagesJudged: 1,
      stagesFailed: 1,
      setAside: 1,
      wentOn: 1,
      alertsDismissed: 0,
    });
  });
});
