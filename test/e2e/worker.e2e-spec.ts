import { alertPage, type RecordCapture, type RemakeAlertView } from '@archwright/contracts';
import { CheckVerdict, Notice, Outbox, RemakeAlert, ReplanProposal } from '@archwright/records';
import { In, IsNull, type EntityManager } from 'typeorm';
import { queueUrl } from '../support/queue.js';
import { until } from '../support/until.js';
import { NOW, bookedCase, found, openBookingPractice, type BookingPractice } from './booking-practice.js';
import { Chairside } from './capture-chairside.js';
import { PostOffice } from './reminders-post-office.js';
import { WorkerRun } from './reminders-worker.js';

const LONG_MS = 240_000;
const SEARCHED_WITHIN_MS = 60_000;

const blunt: RecordCapture['tracings'][number] = {
  stylusOn: 'lower',
  view: 'as-worn',
  posture: 'upright',
  apex: 'none',
  basesMoved: false,
  contact: false,
  pain: false,
};

/** The worker as it is deployed, in a process of its own; nothing of its work is done by the test. */
describe(`the worker, its queue in ${queueUrl() === null ? 'PostgreSQL' : 'Redis'}`, () => {
  let practice: BookingPractice;
  let chair: Chairside;
  let office: PostOffice;
  let worker: WorkerRun;

  beforeAll(async () => {
    practice = await openBookingPractice();
    office = await PostOffice.open();
    worker = new WorkerRun(practice.databaseUrl, office.url, NOW, practice.clockFile);
    chair = await Chairside.at(practice, NOW);
  }, LONG_MS);
  afterAll(async () => {
    await worker.remove();
    await office.close();
    await practice.close();
  });

  /** A new case, base plates made, at its combined visit; so far without the worker. */
  async function atCombinedVisit() {
    const opened = await bookedCase({ ...practice, desk: chair.desk }, { path: 'digital-printed-bases' });
    await chair.begin(opened.id, 'D1');
    await chair.consent(opened.id);
    await chair.passVisitUnderWay(opened.id, 'D1');
    await chair.makeLabWork(opened.id, 'D1');
    return { opened, begun: await chair.begin(opened.id, 'D2') };
  }

  async function plannedAlert(caseId: string): Promise<RemakeAlertView | undefined> {
    const path = '/remake-alerts?state=planned';
    const { items } = await chair.desk.call({ method: 'GET', path, answer: alertPage });
    return items.find((item) => item.caseId === caseId);
  }

  it(
    'takes a failed measurement from the outbox to verdict, alert, proposals and mail',
    async () => {
      const { opened, begun } = await atCombinedVisit();
      await worker.start();
      const mailedBefore = office.received.length;
      await chair.save(begun, { tracings: [blunt, blunt, blunt] });

      await until(async () => !(await chair.view(begun.id)).checking);
      const { verdicts } = await chair.view(begun.id);
      expect(verdicts.find(({ action }) => action === 'return-to-stage')?.reason).toContain('3 is the limit');

      await until(async () => (await plannedAlert(opened.id)) !== undefined, SEARCHED_WITHIN_MS);
      const alert = found(await plannedAlert(opened.id));
      expect(alert).toMatchObject({ trigger: 'jaw-relation-not-recorded', returnToStage: 'D2' });
      expect(alert.proposals.length).toBeGreaterThan(0);

      await until(() => practice.rows(async (tx) => !(await tx.existsBy(Notice, { state: 'scheduled' }))));
      const mails = office.received.slice(mailedBefore).filter(({ subject }) => subject.includes(opened.number));
      expect(new Set(mails.map(({ to }) => to))).toEqual(new Set(['desk@example.test', 'bench@example.test']));
      expect(mails.some(({ subject, text }) => `${subject}${text}`.includes('Booking-Example'))).toBe(false);
      expect(new Set(mails.map(({ messageId }) => messageId)).size).toBe(mails.length);
    },
    LONG_MS,
  );

  it('changes nothing when its jobs come a second time', async () => {
    const before = await effects();
    await practice.rows((tx) =>
      tx.update(Outbox, { kind: In(['check-stage', 'replan-case']) }, { dispatchedAt: null }),
    );
    await until(async () => (await practice.rows(undispatchedJobs)) === 0);
    // A stopping worker ends what it has begun.
    await worker.stop();
    expect(await effects()).toEqual(before);
  });

  const undispatchedJobs = (tx: EntityManager) =>
    tx.countBy(Outbox, { kind: In(['check-stage', 'replan-case']), dispatchedAt: IsNull() });

  const effects = () =>
    practice.rows(async (tx) => ({
      verdicts: await tx.count(CheckVerdict),
      alerts: await tx.count(RemakeAlert),
      proposals: await tx.count(ReplanProposal),
      notices: await tx.count(Notice),
    }));
});
