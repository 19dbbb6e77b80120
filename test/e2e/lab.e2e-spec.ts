import {
  actOnLabStep,
  answerLabQuestion,
  dispatchOf,
  loadOf,
  openQuestionsOf,
  recordCaution,
  reportLateStep,
  stepsOfCase,
  sweep,
  viewLabStep,
  type Actor,
} from '@archwright/casework';
import {
  caseSteps,
  dispatchView,
  loadView,
  openLabQuestions,
  type DispatchStep,
  type LabStepAction,
  type RecordCaution,
} from '@archwright/contracts';
import {
  CustodyObject,
  Disturbance,
  LabQuestion,
  Notice,
  Occupancy,
  TreatmentCase,
  claim,
  createDataSource,
  inOrganisation,
  uuidv7,
} from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';
import { createSuiteDatabase, type SuiteDatabase } from '../support/database.js';
import { NOW, aHold, aPractice, at, nth, type TestPractice } from './records/records-practice.js';
import { aLabCase, aPerson, openLaboratory, sign, type LabCase } from './lab-case.js';

const ON = '2027-01-05';

describe('the bench', () => {
  let database: SuiteDatabase;
  let db: DataSource;
  let practice: TestPractice;
  let bench: Actor;
  let clinician: Actor;
  let treated: LabCase;

  beforeAll(async () => {
    database = await createSuiteDatabase();
    db = await createDataSource({ url: database.url, applicationName: 'suite', connections: 4 }).initialize();
  });
  afterAll(async () => {
    await db.destroy();
    await database.drop();
  });
  beforeEach(async () => {
    practice = await aPractice(db);
    await inPractice(async (tx) => {
      await openLaboratory(tx, practice);
      bench = await aPerson(tx, practice, 'lab');
      clinician = await aPerson(tx, practice, 'clinician', { practitionerId: nth(practice.clinicianIds, 0) });
      treated = await aLabCase(tx, practice);
    });
  });

  const inPractice = <Result>(work: (tx: EntityManager) => Promise<Result>) =>
    inOrganisation(db, practice.organisationId, work);
  const signIt = () => inPractice((tx) => sign(tx, treated, clinician));
  const view = (index: number, now = NOW) =>
    inPractice((tx) => viewLabStep(tx, bench, nth(treated.stepIds, index), now));
  const act = async (index: number, action: LabStepAction, now = at('08:00'), actor = bench): Promise<DispatchStep> => {
    const { version } = await view(index);
    return inPractice((tx) => actOnLabStep(tx, actor, nth(treated.stepIds, index), { ...action, version }, now));
  };
  const dispatch = (now = NOW, on = ON, actor = bench) =>
    inPractice((tx) => dispatchOf(tx, actor, { laboratoryId: practice.laboratoryId, on }, now));
  const load = (now = NOW, days = 2) =>
    inPractice((tx) => loadOf(tx, bench, { laboratoryId: practice.laboratoryId, from: ON, days }, now));

  describe('its list of the day', () => {
    it('says what each step waits for, first the signed work order, then the step before it', async () => {
      expect((await view(0)).waitsFor).toContain('The signed work order');
      await signIt();
      expect((await view(0)).waitsFor).toBeNull();
      expect((await view(1)).waitsFor).toContain('to be finished');
    });

    it('puts the least slack first, whatever is planned earlier, and says so', async () => {
      const urgent = await inPractice((tx) =>
        aLabCase(tx, practice, { startsAt: at('11:00'), visitAt: at('09:00', 2) }),
      );
      const { steps, order } = dispatchView.parse(await dispatch());
      expect(order).toContain('Least slack first');
      expect(steps.map(({ caseId }) => caseId).slice(0, urgent.stepIds.length)).toEqual(
        urgent.stepIds.map(() => urgent.caseId),
      );
      const slack = steps.map(({ slackMinutes }) => slackMinutes ?? Infinity);
      expect(slack).toEqual([...slack].sort((one, other) => one - other));
      expect(steps.find(({ caseId }) => caseId === treated.caseId)?.slackMinutes).toBe(
        (at('09:00', 3).getTime() - at('08:00').getTime()) / 60_000 - treated.stepIds.length * 60,
      );
    });

    it('keeps unfinished work of earlier days in sight', async () => {
      const tomorrow = await dispatch(at('12:00', 1), '2027-01-06');
      expect(tomorrow.steps).toHaveLength(treated.stepIds.length);
      const ahead = await dispatch(NOW, '2027-01-06');
      expect(ahead.steps).toEqual([]);
    });

    it('shows the work of one case to its laboratory alone', async () => {
      const { items } = caseSteps.parse(await inPractice((tx) => stepsOfCase(tx, bench, treated.caseId, NOW)));
      expect(items.map(({ id }) => id)).toEqual(treated.stepIds);
      expect(items[0]).toEqual(await view(0));
      const stranger = { ...bench, laboratoryIds: [uuidv7()] };
      await expect(inPractice((tx) => stepsOfCase(tx, stranger, treated.caseId, NOW))).rejects.toThrow('case');
    });

    it('says which step its bench has reported late, and tells the clinic, while nothing moves', async () => {
      const before = await view(0);
      const readyAt = new Date(Date.parse(before.endsAt) + 86_400_000).toISOString();
      const report = (actor = bench, ready = readyAt) =>
        inPractice((tx) =>
          reportLateStep(tx, actor, nth(treated.stepIds, 0), { readyAt: ready, reason: 'The printer is down.' }, NOW),
        );
      await expect(report({ ...bench, laboratoryIds: [uuidv7()] })).rejects.toThrow('laboratory');
      await expect(report(bench, before.endsAt)).rejects.toThrow('endsAt');
      const { step, cases } = await report();
      expect(cases).toBeGreaterThan(0);
      expect(step).toEqual({ ...before, lateUntil: readyAt });
      await expect(report()).rejects.toThrow('said to be late');
      const told = await inPractice((tx) => tx.findBy(Notice, { kind: 'lab-step-late', caseId: treated.caseId }));
      expect(told.map(({ recipient }) => recipient)).toEqual(['clinic']);
      const lost = await inPractice((tx) => tx.findBy(Disturbance, { labStepId: before.id }));
      expect(lost.map(({ state, endsAt }) => [state, endsAt.toISOString()])).toEqual([['open', readyAt]]);
    });

    it('names no patient', async () => {
      const seen = JSON.stringify([await dispatch(), await load()]);
      expect(seen).not.toContain('Mole');
      expect(seen).not.toContain('Ada');
    });

    it('says which materials to avoid for allergies, and nothing else of the patient', async () => {
      const { patientId } = await inPractice((tx) => tx.findOneByOrFail(TreatmentCase, { id: treated.caseId }));
      const record = (body: RecordCaution) => inPractice((tx) => recordCaution(tx, clinician, patientId, body, NOW));
      await record({ kind: 'material-allergy', material: 'methacrylate', note: 'Blisters in 2019.' });
      await record({ kind: 'material-allergy', material: 'eugenol', note: null });
      await record({ kind: 'bleeding', note: null });
      expect(new Set((await dispatch()).steps.map(({ avoidMaterials }) => avoidMaterials.join()))).toEqual(
        new Set(['methacrylate']),
      );
      expect(JSON.stringify(await dispatch())).not.toMatch(/Blisters|eugenol|bleed/);
    });

    it('does not exist for the people of another laboratory', async () => {
      const stranger = { ...bench, laboratoryIds: [] };
      await expect(dispatch(NOW, ON, stranger)).rejects.toMatchObject({ code: 'casework.not-found' });
      await expect(act(0, { action: 'start' }, NOW, stranger)).rejects.toMatchObject({ code: 'casework.not-found' });
    });
  });

  describe('its steps', () => {
    it('are started, paused, started again and finished, and the next one may begin', async () => {
      await signIt();
      expect((await act(0, { action: 'start' })).state).toBe('started');
      expect((await act(0, { action: 'pause' })).state).toBe('paused');
      await act(0, { action: 'start' });
      expect((await act(0, { action: 'finish' })).state).toBe('finished');
      expect((await view(1)).waitsFor).toBeNull();
      const kinds: { kind: string }[] = await inPractice((tx) =>
        tx.query(`SELECT kind FROM case_event WHERE case_id = $1 ORDER BY sequence`, [treated.caseId]),
      );
      expect(kinds.map(({ kind }) => kind)).toEqual([
        'lab-step-started',
        'lab-step-paused',
        'lab-step-started',
        'lab-step-finished',
      ]);
    });

    it('do not begin while they wait, nor end before they began', async () => {
      await expect(act(0, { action: 'start' })).rejects.toMatchObject({ code: 'casework.state-conflict' });
      await signIt();
      await expect(act(1, { action: 'start' })).rejects.toThrow('to be finished');
      await expect(act(0, { action: 'finish' })).rejects.toThrow('accepted: started');
    });

    it('do not begin with an impression that is past its use-by or in quarantine', async () => {
      await signIt();
      const id = uuidv7();
      await inPractice((tx) =>
        tx.insert(CustodyObject, {
          id,
          caseId: treated.caseId,
          code: `${id}-impression`,
          kind: 'impression',
          arch: 'upper',
          holder: 'clinic',
          clinicId: practice.clinicId,
          state: 'in-use',
          useBy: at('08:00'),
        }),
      );
      expect((await view(0, at('07:59'))).waitsFor).toBeNull();
      await expect(act(0, { action: 'start' })).rejects.toThrow(/to be fit for use. Its use-by passed/);
      const aside = { state: 'quarantined' as const, stateReason: 'Torn', useBy: null };
      await inPractice((tx) => tx.update(CustodyObject, { id }, aside));
      expect((await view(0)).waitsFor).toContain('It is quarantined: Torn');
    });

    it('refuse a change that is based on an older version', async () => {
      await signIt();
      const { version } = await view(0);
      await act(0, { action: 'start' });
      const late = inPractice((tx) =>
        actOnLabStep(tx, bench, nth(treated.stepIds, 0), { action: 'pause', version }, NOW),
      );
      await expect(late).rejects.toMatchObject({ code: 'platform.precondition-failed' });
    });

    it('give their bench back when the work is rejected, and the clinic is told', async () => {
      const rejected = await act(0, { action: 'reject', reason: 'The impression is torn.' });
      expect(rejected.state).toBe('rejected');
      const labStepId = nth(treated.stepIds, 0);
      expect(await inPractice((tx) => tx.countBy(Occupancy, { labStepId }))).toBe(0);
      const notices = await noticesOf();
      expect(notices).toEqual([{ kind: 'lab-step-rejected', recipient: 'clinic' }]);
    });
  });

  describe('a question', () => {
    const ask = async () => {
      await signIt();
      await act(0, { action: 'start' });
      return act(0, { action: 'ask', question: 'Which shade?' });
    };
    const questionId = async () =>
      (await inPractice((tx) => tx.findOneByOrFail(LabQuestion, { caseId: treated.caseId }))).id;
    const answer = async (actor = clinician) => {
      const id = await questionId();
      await inPractice((tx) => answerLabQuestion(tx, actor, id, 'As before.', at('10:00')));
    };

    it('stops the clock of its step until the answer', async () => {
      const asked = { question: 'Which shade?', askedBy: 'A lab', answer: null, answeredAt: null };
      expect(await ask()).toMatchObject({ state: 'paused', question: asked });
      expect((await dispatch()).steps.at(-1)?.question).toMatchObject(asked);
      await expect(act(0, { action: 'start' })).rejects.toThrow("The clinician's answer");
      await answer();
      const answered = { answer: 'As before.', answeredBy: 'A clinician', answeredAt: at('10:00').toISOString() };
      expect((await view(0)).question).toMatchObject(answered);
      expect((await noticesOf()).at(-1)).toEqual({ kind: 'lab-question-answered', recipient: 'laboratory' });
      expect((await act(0, { action: 'start' })).state).toBe('started');
    });

    it('reaches the clinician, and the front desk when nobody has answered within a day, once', async () => {
      await ask();
      expect(await noticesOf()).toEqual([{ kind: 'lab-question', recipient: 'clinician' }]);
      expect((await sweep(db, practice.organisationId, at('07:59', 1))).escalated).toBe(0);
      expect((await sweep(db, practice.organisationId, at('08:00', 1))).escalated).toBe(1);
      expect((await sweep(db, practice.organisationId, at('09:00', 1))).escalated).toBe(0);
      expect((await noticesOf()).at(-1)).toEqual({ kind: 'lab-question-overdue', recipient: 'clinic' });
    });

    it('stands before the clinic of the case until it is answered, and before no other', async () => {
      await ask();
      const { items } = openLabQuestions.parse(await inPractice((tx) => openQuestionsOf(tx, clinician)));
      expect(items).toMatchObject([{ id: await questionId(), caseId: treated.caseId, question: 'Which shade?' }]);
      const elsewhere = { ...clinician, clinicIds: [] };
      expect((await inPractice((tx) => openQuestionsOf(tx, elsewhere))).items).toEqual([]);
      await answer();
      expect((await inPractice((tx) => openQuestionsOf(tx, clinician))).items).toEqual([]);
    });

    it('is asked one at a time and answered once, by the clinic of the case', async () => {
      await ask();
      await expect(act(0, { action: 'ask', question: 'And which form?' })).rejects.toThrow('one question at a time');
      await expect(answer({ ...clinician, clinicIds: [] })).rejects.toMatchObject({ code: 'casework.not-found' });
      await answer();
      await expect(answer()).rejects.toMatchObject({ code: 'casework.state-conflict' });
    });
  });

  describe('its load', () => {
    const benchDays = async (now = NOW) => {
      const { workCentres } = loadView.parse(await load(now));
      return nth(
        workCentres.filter(({ id }) => id === treated.workCentreId),
        0,
      ).days;
    };

    it('is booked of open minutes by day of the laboratory', async () => {
      expect(await benchDays()).toEqual([
        { on: '2027-01-05', bookedMinutes: treated.stepIds.length * 60, openMinutes: 540 },
        { on: '2027-01-06', bookedMinutes: 0, openMinutes: 540 },
      ]);
    });

    it('counts a live hold and no expired one', async () => {
      const until = new Date(NOW.getTime() + 900_000);
      await inPractice(async (tx) => {
        const hold = { id: await aHold(tx, treated.caseId, until), until };
        const time = { resourceId: treated.placeId, startsAt: at('09:00', 1), endsAt: at('10:00', 1) };
        await claim(tx, [{ ...time, purpose: 'lab', hold }], NOW);
      });
      expect((await benchDays())[1]?.bookedMinutes).toBe(60);
      expect((await benchDays(until))[1]?.bookedMinutes).toBe(0);
    });

    it('does not count what runs by itself at night, and takes closed time off what is open', async () => {
      await inPractice((tx) =>
        claim(
          tx,
          [
            { resourceId: treated.placeId, startsAt: at('15:00', 1), endsAt: at('05:00', 2), purpose: 'lab' },
            { resourceId: treated.placeId, startsAt: at('07:00', 1), endsAt: at('08:00', 1), purpose: 'closure' },
          ],
          NOW,
        ),
      );
      expect((await benchDays())[1]).toEqual({ on: '2027-01-06', bookedMinutes: 60, openMinutes: 480 });
    });

    it('names what will be late, and why', async () => {
      expect((await load()).atRisk).toEqual([]);
      const { atRisk } = await load(at('08:30', 3));
      expect(atRisk).toHaveLength(1);
      expect(atRisk[0]?.cause.sentence).toContain('waits for: The signed work order');
      expect(atRisk[0]).toMatchObject({ workCentreId: treated.workCentreId, on: '2027-01-08' });
      await signIt();
      expect((await load(at('08:30', 3))).atRisk[0]?.cause.sentence).toContain(
        'should have begun on Tuesday 5 January 2027 at 09:00',
      );
    });
  });

  async function noticesOf(): Promise<{ kind: string; recipient: string }[]> {
    return inPractice((tx) =>
      tx.query('SELECT kind, recipient FROM notice WHERE case_id = $1 ORDER BY created_at, id', [treated.caseId]),
    );
  }
});
