import { createServer, type Server } from 'node:http';
import { mkdtempSync, rmSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { deliverReminder, hashPassword, scheduleReminders, type Post } from '@archwright/casework';
import {
  callList,
  callTaskView,
  demoClock,
  dispatchStep,
  itineraryView,
  loadView,
  problem,
  reminderView,
} from '@archwright/contracts';
import { RefusedMailError, type Mail } from '@archwright/notices';
import { createLogger, parseConfiguration } from '@archwright/platform';
import { Directory, Reminder, UserAccount, createDataSource, inOrganisation, uuidv7 } from '@archwright/records';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import type { DataSource, EntityManager } from 'typeorm';
import { z } from 'zod';
import { createApi } from '../../apps/api/src/create-api.js';
import { createSuiteDatabase, type SuiteDatabase } from '../support/database.js';
import { aLabCase, aPerson, openLaboratory, sign, type LabCase } from './lab-case.js';
import { NOW, aCase, aPractice, at, nth, type TestPractice } from './records/records-practice.js';
import { aBookedPatient, readOne, type BookedPatient } from './reminders-patients.js';

const SECRET = 'a-secret-of-the-tests-long-enough-for-it';
const PASSWORD = 'a password of the tests';

describe('reminders, calls and the bench over HTTP', () => {
  let database: SuiteDatabase;
  let db: DataSource;
  let practice: TestPractice;
  let app: NestFastifyApplication;
  let catcher: Server;
  let folder: string;
  let patient: BookedPatient;
  let treated: LabCase;
  const mails: Mail[] = [];
  const cookies = new Map<string, string>();

  const inPractice = <Result>(work: (tx: EntityManager) => Promise<Result>) =>
    inOrganisation(db, practice.organisationId, work);

  beforeAll(async () => {
    database = await createSuiteDatabase();
    db = await createDataSource({ url: database.url, applicationName: 'suite', connections: 4 }).initialize();
    practice = await aPractice(db);
    folder = mkdtempSync(join(tmpdir(), 'archwright-clock-'));
    catcher = createServer((_request, response) => response.end(JSON.stringify({ items: [] })));
    await new Promise<void>((resolve) => catcher.listen(0, '127.0.0.1', resolve));
    await inPractice(async (tx) => {
      await openLaboratory(tx, practice);
      const people = {
        desk: await aPerson(tx, practice, 'front-desk'),
        clinician: await aPerson(tx, practice, 'clinician'),
        bench: await aPerson(tx, practice, 'lab'),
      };
      const passwordHash = await hashPassword(PASSWORD);
      const { organisationId } = practice;
      for (const [signInName, { userId }] of Object.entries(people)) {
        await tx.update(UserAccount, { id: userId ?? '' }, { passwordHash });
        await tx.insert(Directory, { id: uuidv7(), kind: 'sign-in', organisationId, signInName, userId });
      }
      patient = await aBookedPatient(tx, practice, { startsAt: at('09:00', 9) });
      await scheduleReminders(tx, [patient.appointmentId], NOW);
      treated = await aLabCase(tx, practice);
      await sign(tx, treated, people.clinician);
    });
    app = await createApi(
      configuration({ ARCHWRIGHT_CLOCK_FILE: join(folder, 'clock') }),
      createLogger('api', 'silent'),
    );
    for (const signInName of ['desk', 'clinician', 'bench']) await signInAs(app, signInName);
  }, 60_000);
  afterAll(async () => {
    await app.close();
    catcher.close();
    await db.destroy();
    await database.drop();
    rmSync(folder, { recursive: true });
  });

  function configuration(more: Record<string, string>) {
    const catcherUrl = `http://127.0.0.1:${String((catcher.address() as AddressInfo).port)}`;
    return parseConfiguration({
      DATABASE_URL: database.url,
      SESSION_SECRET: SECRET,
      LOG_LEVEL: 'silent',
      PUBLIC_URL: 'http://practice.example',
      ARCHWRIGHT_CLOCK: NOW.toISOString(),
      MAIL_CATCHER_URL: catcherUrl,
      ...more,
    });
  }

  async function signInAs(service: NestFastifyApplication, signInName: string): Promise<void> {
    const payload = { signInName, password: PASSWORD };
    const answer = await service.inject({ method: 'POST', url: '/api/v1/sessions', payload });
    const [cookie] = [answer.headers['set-cookie']].flat();
    cookies.set(signInName, (cookie ?? '').split(';')[0] ?? '');
  }

  interface Call {
    method?: 'GET' | 'POST' | 'PUT';
    path: string;
    body?: object;
    version?: number;
  }

  function call(who: string, { method = 'GET', path, body, version }: Call, service = app) {
    const headers = {
      cookie: cookies.get(who) ?? '',
      ...(version === undefined ? {} : { 'if-match': `"${String(version)}"` }),
    };
    return service.inject({ method, url: `/api/v1${path}`, headers, ...(body === undefined ? {} : { payload: body }) });
  }

  /** A post that keeps its mail, or refuses it. */
  const post = (refuses = false): Post => ({
    mailer: {
      send: (mail) => {
        if (refuses) return Promise.reject(new RefusedMailError('RCPT TO', 550, 'an address'));
        mails.push(mail);
        return Promise.resolve();
      },
      close: () => undefined,
    },
    from: { mail: 'appointments@practice.example', name: 'Appointments' },
    publicUrl: 'http://practice.example',
    linkSecret: SECRET,
  });

  async function deliver({ appointmentId }: BookedPatient, refuses = false): Promise<void> {
    const { id, dueAt } = await inPractice((tx) => tx.findOneByOrFail(Reminder, { appointmentId }));
    const { organisationId } = practice;
    await deliverReminder(db, post(refuses), { organisationId, reminderId: id }, dueAt);
  }

  it('lists the reminders of a case to the front desk only', async () => {
    const path = `/cases/${patient.caseId}/reminders`;
    const { items } = z.object({ items: z.array(reminderView) }).parse((await call('desk', { path })).json());
    expect(items).toMatchObject([{ appointmentId: patient.appointmentId, channel: 'mail', state: 'scheduled' }]);
    expect((await call('bench', { path })).statusCode).toBe(403);
    expect((await call('desk', { path: `/cases/${uuidv7()}/reminders` })).statusCode).toBe(404);
  });

  it('hands the coming visits over: as a list, as a calendar file, and by mail once more', async () => {
    const path = `/cases/${patient.caseId}/itinerary`;
    const { way, visits } = itineraryView.parse((await call('desk', { path })).json());
    expect(way).toBe('mail');
    expect(visits).toMatchObject([{ appointmentId: patient.appointmentId, startsAt: at('09:00', 9).toISOString() }]);
    const file = await call('desk', { path: `${path}/calendar` });
    expect(file.headers['content-type']).toBe('text/calendar; charset=utf-8');
    expect(file.body).toMatch(/^BEGIN:VCALENDAR\r\n/);
    expect(file.body.match(/^SUMMARY:Appointment\r$/gm)).toHaveLength(1);
    const headers = { cookie: cookies.get('desk') ?? '', 'idempotency-key': 'itinerary-once-more' };
    const send = () => app.inject({ method: 'POST', url: `/api/v1${path}`, headers });
    expect((await send()).json()).toEqual({ way: 'mail' });
    await send();
    const sql = `SELECT count(*)::integer AS notices FROM notice WHERE case_id = $1 AND kind = 'itinerary'`;
    expect(await readOne(db, practice, sql, [patient.caseId])).toEqual({ notices: 1 });
  });

  it('has nothing to hand over where no visit is to come', async () => {
    const { caseId } = await inPractice((tx) => aCase(tx, practice));
    const path = `/cases/${caseId}/itinerary`;
    expect(itineraryView.parse((await call('desk', { path })).json())).toEqual({ way: 'call', visits: [] });
    expect((await call('desk', { path: `${path}/calendar` })).statusCode).toBe(409);
  });

  it('brings a refused reminder to the call list, and a reached patient has confirmed', async () => {
    const refused = await inPractice(async (tx) => {
      const booked = await aBookedPatient(tx, practice, { startsAt: at('09:00', 12) });
      await scheduleReminders(tx, [booked.appointmentId], NOW);
      return booked;
    });
    await deliver(refused, true);
    const { items, sentence } = callList.parse((await call('desk', { path: '/call-tasks' })).json());
    const task = nth(
      items.filter(({ patientId }) => patientId === refused.patientId),
      0,
    );
    expect(sentence).toContain('1 call to make');
    const path = `/call-tasks/${task.id}/attempts`;
    const attempt = (outcome: string, version?: number) =>
      call('desk', { method: 'POST', path, body: { outcome }, ...(version === undefined ? {} : { version }) });
    expect((await attempt('no-answer')).statusCode).toBe(428);
    const again = callTaskView.parse((await attempt('no-answer', task.version)).json());
    expect(again.state).toBe('open');
    expect((await attempt('reached', task.version)).statusCode).toBe(412);
    const done = await attempt('reached', again.version);
    expect(done.headers.etag).toBe(`"${String(again.version + 1)}"`);
    expect(callTaskView.parse(done.json()).attempts.map(({ outcome }) => outcome)).toEqual(['no-answer', 'reached']);
    expect((await attempt('reached', again.version + 1)).statusCode).toBe(409);
    expect(await confirmedAt(refused)).not.toBeNull();
  });

  const confirmedAt = async ({ appointmentId }: BookedPatient) => {
    const sql = 'SELECT confirmed_by_patient_at AS at FROM appointment WHERE id = $1';
    return (await readOne<{ at: Date | null }>(db, practice, sql, [appointmentId])).at;
  };

  it('lets the patient confirm by the link in the mail, by its button and not by following it', async () => {
    await deliver(patient);
    const { text } = nth(mails, mails.length - 1);
    const link = nth(/http:\/\/practice\.example(\/api\/v1\/replies\/confirm\?token=\S+)/.exec(text) ?? [], 1);
    const page = await app.inject(link);
    expect(page.statusCode).toBe(200);
    expect(page.headers['content-type']).toContain('text/html');
    expect(page.headers['content-security-policy']).toContain("form-action 'self'");
    expect(page.body).toContain('<button');
    expect(await confirmedAt(patient)).toBeNull();
    const form = { 'content-type': 'application/x-www-form-urlencoded' };
    const given = await app.inject({ method: 'POST', url: link, headers: form, payload: '' });
    expect(given.body).toContain('Thank you');
    expect(await confirmedAt(patient)).not.toBeNull();
  });

  it('opens nothing for a link that was changed or serves another purpose', async () => {
    const { text } = nth(mails, mails.length - 1);
    const token = nth(/replies\/ask-to-move\?token=(\S+)/.exec(text) ?? [], 1);
    for (const path of [`ask-to-move?token=x${token}`, `confirm?token=${token}`]) {
      const page = await app.inject(`/api/v1/replies/${path}`);
      expect(page.body).toContain('no appointment that still stands');
    }
    expect((await app.inject(`/api/v1/replies/ask-to-move?token=${token}`)).body).toContain('<button');
  });

  it('shows the load and the steps to the bench, and lets it act on the version it saw', async () => {
    const load = await call('bench', {
      path: `/lab/load?laboratoryId=${practice.laboratoryId}&from=2027-01-05&days=2`,
    });
    expect(loadView.parse(load.json()).days).toEqual(['2027-01-05', '2027-01-06']);
    const path = `/lab/steps/${nth(treated.stepIds, 0)}`;
    const shown = await call('bench', { path });
    const { version } = dispatchStep.parse(shown.json());
    expect(shown.headers.etag).toBe(`"${String(version)}"`);
    const start = { method: 'POST' as const, path: `${path}/actions`, body: { action: 'start' }, version };
    expect((await call('desk', start)).statusCode).toBe(403);
    expect(dispatchStep.parse((await call('bench', start)).json()).state).toBe('started');
    expect((await call('bench', start)).statusCode).toBe(412);
    const finish = { ...start, body: { action: 'dance' }, version: version + 1 };
    expect((await call('bench', finish)).statusCode).toBe(400);
  });

  it('passes on what the demonstration caught', async () => {
    expect((await call('desk', { path: '/caught-mail' })).json()).toEqual({ items: [] });
    expect((await app.inject('/api/v1/caught-mail')).statusCode).toBe(401);
  });

  it("moves the demonstration's clock forward, and not back", async () => {
    const { now } = demoClock.parse((await call('desk', { path: '/demo/clock' })).json());
    const move = (to: string) => call('desk', { method: 'PUT', path: '/demo/clock', body: { now: to } });
    const back = await move(new Date(Date.parse(now) - 3_600_000).toISOString());
    expect(back.statusCode).toBe(422);
    expect(problem.parse(back.json()).detail).toContain('moves forward only');
    const wanted = new Date(Date.parse(now) + 3_600_000).toISOString();
    const moved = demoClock.parse((await move(wanted)).json());
    expect(Date.parse(moved.now) - Date.parse(wanted)).toBeLessThan(2_000);
  });

  it('has neither clock nor caught mail outside the demonstration', async () => {
    const plain = await createApi(configuration({ MAIL_CATCHER_URL: '' }), createLogger('api', 'silent'));
    try {
      for (const path of ['/caught-mail', '/demo/clock']) {
        expect((await call('desk', { path }, plain)).statusCode).toBe(404);
      }
    } finally {
      await plain.close();
    }
  });
});
