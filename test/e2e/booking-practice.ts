import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  caseView,
  demoClock,
  holdView,
  offersView,
  patientView,
  practiceView,
  type CaseView,
  type Wishes,
  type HoldView,
  type Offer,
  type OffersView,
  type PracticeView,
} from '@archwright/contracts';
import { Searches } from '@archwright/casework';
import { createLogger, parseConfiguration } from '@archwright/platform';
import { createDataSource, inOrganisation, listOrganisations } from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';
import { z } from 'zod';
import { createApi } from '../../apps/api/src/create-api.js';
import { loadDemoPractice } from '../../apps/cli/src/demo-practice/load-demo.js';
import { ApiSession } from '../../apps/cli/src/demo/api-session.js';
import { demoPassword } from '../../apps/cli/src/demo/scenario.js';
import { createSuiteDatabase } from '../support/database.js';

const SECRET = 'a-secret-of-the-tests-long-enough-for-it';

/** A Monday in winter, before anybody has opened. */
export const NOW = new Date('2027-01-04T07:00:00Z');

/** The demonstration practice behind a listening service, with a front desk that talks to it. */
export interface BookingPractice {
  /** Of the service's calls. */
  readonly url: string;
  readonly desk: ApiSession;
  readonly practice: PracticeView;
  readonly organisationId: string;
  /** The application's login, for a worker beside the service. */
  readonly databaseUrl: string;
  /** The service's clock, which whoever runs beside it reads too. */
  readonly clockFile: string;
  readonly searches: Searches;
  signIn(name: string): Promise<ApiSession>;
  /** Rows as the application's own login sees them. */
  rows<Result>(work: (tx: EntityManager) => Promise<Result>): Promise<Result>;
  moveClock(to: Date): Promise<void>;
  close(): Promise<void>;
}

export async function openBookingPractice(): Promise<BookingPractice> {
  const database = await createSuiteDatabase();
  const folder = mkdtempSync(join(tmpdir(), 'archwright-booking-'));
  const db = createDataSource({ url: database.url, applicationName: 'booking-suite', connections: 3 });
  await db.initialize();
  await loadDemoPractice(db, NOW);
  const clockFile = join(folder, 'clock');
  const configuration = parseConfiguration({
    DATABASE_URL: database.url,
    SESSION_SECRET: SECRET,
    LOG_LEVEL: 'silent',
    ARCHWRIGHT_CLOCK: NOW.toISOString(),
    ARCHWRIGHT_CLOCK_FILE: clockFile,
  });
  const app = await createApi(configuration, createLogger('api', 'silent'));
  await app.listen(0, '127.0.0.1');
  const url = await app.getUrl();
  const signIn = async (name: string) => {
    const session = new ApiSession(url);
    await session.signIn(`${name}@example.test`, demoPassword);
    return session;
  };
  const desk = await signIn('desk');
  const organisationId = await only(db);
  return {
    url: `${url}/api/v1`,
    desk,
    practice: await desk.call({ method: 'GET', path: '/practice', answer: practiceView }),
    organisationId,
    databaseUrl: database.url,
    clockFile,
    searches: app.get(Searches, { strict: false }),
    signIn,
    rows: (work) => inOrganisation(db, organisationId, work),
    moveClock: async (to) => {
      await desk.call({ method: 'PUT', path: '/demo/clock', body: { now: to.toISOString() }, answer: demoClock });
    },
    close: async () => {
      await app.close();
      await db.destroy();
      await database.drop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function only(db: DataSource): Promise<string> {
  const [organisationId = ''] = await listOrganisations(db);
  return organisationId;
}

/** Who books, and what there is to book. */
type FrontDesk = Pick<BookingPractice, 'desk' | 'practice'>;

interface CaseWishes {
  readonly path?: string;
  readonly weekdays?: readonly number[];
  readonly unavailableOn?: readonly string[];
  readonly escort?: Wishes['escort'];
  readonly clinics?: number;
  readonly clinicianId?: string;
}

/** A new patient with a case on one path for both arches, as the desk opens it. */
export async function openCaseOf({ desk, practice }: FrontDesk, wishes: CaseWishes = {}): Promise<CaseView> {
  const path = found(practice.paths.find(({ code }) => code === (wishes.path ?? 'conventional')));
  const patient = await desk.call({
    method: 'POST',
    path: '/patients',
    answer: patientView,
    body: {
      givenName: 'Ida',
      familyName: 'Booking-Example',
      birthOn: '1950-02-03',
      zone: 'Europe/London',
      phone: '+44 20 7946 0012',
      wishes: {
        weekdays: wishes.weekdays ?? [],
        from: null,
        to: null,
        unavailableOn: wishes.unavailableOn ?? [],
        escort: wishes.escort ?? null,
      },
    },
  });
  return desk.call({
    method: 'POST',
    path: '/cases',
    answer: caseView,
    body: {
      patientId: patient.id,
      arches: [
        { arch: 'upper', pathVersionId: path.versionId },
        { arch: 'lower', pathVersionId: path.versionId },
      ],
      clinicIds: practice.clinics.slice(0, wishes.clinics ?? 2).map(({ id }) => id),
      clinicianId: wishes.clinicianId ?? null,
    },
  });
}

export function askOffers({ desk }: FrontDesk, caseId: string, body: object = {}): Promise<OffersView> {
  return desk.call({ method: 'POST', path: `/cases/${caseId}/offers`, body, answer: offersView });
}

export function holdOf({ desk }: FrontDesk, caseId: string, offer: Offer, more: object = {}): Promise<HoldView> {
  return desk.call({
    method: 'POST',
    path: `/cases/${caseId}/holds`,
    body: { offerId: offer.id, kind: 'phone', ...more },
    answer: holdView,
  });
}

export function confirmOf(
  { desk }: FrontDesk,
  hold: HoldView,
  firm: 'all' | number = 'all',
  planHash = hold.planHash,
): Promise<CaseView> {
  return desk.call({ method: 'POST', path: `/holds/${hold.id}/confirm`, body: { planHash, firm }, answer: caseView });
}

export const releaseOf = ({ desk }: BookingPractice, hold: HoldView): Promise<unknown> =>
  desk.call({ method: 'DELETE', path: `/holds/${hold.id}`, answer: z.undefined() });

/** A case with its first offer booked. */
export async function bookedCase(practice: FrontDesk, wishes: CaseWishes = {}): Promise<CaseView> {
  const opened = await openCaseOf(practice, wishes);
  const { offers } = await askOffers(practice, opened.id);
  return confirmOf(practice, await holdOf(practice, opened.id, found(offers[0])));
}

/** What a test knows to be there. */
export function found<Value>(value: Value | null | undefined): Value {
  if (value == null) throw new Error('It is not there.');
  return value;
}

/** Resources taken twice at one time, booked or held: there must never be any. */
export function overlaps(practice: BookingPractice): Promise<number> {
  return practice.rows(async (tx) => {
    const [row]: { count: number }[] = await tx.query(
      `SELECT count(*)::integer AS count FROM occupancy a JOIN occupancy b
         ON a.resource_id = b.resource_id AND a.id < b.id AND a.starts_at < b.ends_at AND a.ends_at > b.starts_at`,
    );
    return row?.count ?? -1;
  });
}
