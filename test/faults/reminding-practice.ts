import { join } from 'node:path';
import { scheduleReminders } from '@archwright/casework';
import { SharedClock } from '@archwright/platform';
import { createDataSource, inOrganisation } from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';
import { NOW, aPractice, type TestPractice } from '../e2e/records/records-practice.js';
import { aBookedPatient, type BookedPatient } from '../e2e/reminders-patients.js';
import { createSuiteDatabase } from '../support/database.js';
import { queueUrl } from '../support/queue.js';
import { temporaryFolder } from '../support/service.js';
import { ServiceProcess } from '../support/service-process.js';
import { PostOffice } from './post-office.js';

/** The practice of these tests reminds two days before. */
const LEAD_MS = 2 * 86_400_000;

/** A practice that reminds its patients: rows, a worker to kill, a mail server, and a clock for all. */
export interface RemindingPractice {
  readonly adminUrl: string;
  readonly databaseUrl: string;
  readonly office: PostOffice;
  readonly worker: ServiceProcess;
  readonly clock: SharedClock;
  /** A whole minute so far ahead on the practice's clock. */
  inMinutes(minutes: number): Date;
  /** Books a visit of a new patient; its reminder is due at `dueAt`, its itinerary at once. */
  book(dueAt: Date): Promise<BookedPatient>;
  rows<Result>(work: (tx: EntityManager) => Promise<Result>): Promise<Result>;
  close(): Promise<void>;
}

export async function openRemindingPractice(): Promise<RemindingPractice> {
  const database = await createSuiteDatabase();
  const folder = temporaryFolder();
  const clockFile = join(folder.path, 'clock');
  const clock = new SharedClock(clockFile, NOW.toISOString());
  const settings = { url: database.url, applicationName: 'faults-suite', connections: 3 };
  const db: DataSource = await createDataSource(settings).initialize();
  const practice: TestPractice = await aPractice(db);
  const office = await PostOffice.open();
  const queue = queueUrl();
  const worker = new ServiceProcess('worker', {
    DATABASE_URL: database.url,
    ...(queue === null ? {} : { QUEUE_URL: queue }),
    SESSION_SECRET: 'a-secret-of-the-tests-long-enough-for-it',
    SMTP_URL: office.url,
    MAIL_FROM: 'Appointments <appointments@practice.example>',
    PUBLIC_URL: 'http://practice.example',
    ARCHWRIGHT_CLOCK_FILE: clockFile,
  });
  const rows: RemindingPractice['rows'] = (work) => inOrganisation(db, practice.organisationId, work);
  return {
    adminUrl: database.adminUrl,
    databaseUrl: database.url,
    office,
    worker,
    clock,
    rows,
    inMinutes: (minutes) => new Date((Math.floor(clock.nowMs() / 60_000) + minutes) * 60_000),
    book: (dueAt) =>
      rows(async (tx) => {
        const startsAt = new Date(dueAt.getTime() + LEAD_MS);
        const booked = await aBookedPatient(tx, practice, { startsAt });
        await scheduleReminders(tx, [booked.appointmentId], clock.now());
        return booked;
      }),
    close: async () => {
      await worker.stop();
      await office.close();
      await db.destroy();
      await database.drop();
      folder.remove();
    },
  };
}
