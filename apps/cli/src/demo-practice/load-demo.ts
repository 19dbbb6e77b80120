import { createHash } from 'node:crypto';
import { shippedPaths } from '@archwright/protocol';
import {
  Directory,
  Organisation,
  TreatmentPathVersion,
  createDataSource,
  inOrganisation,
  uuidv7,
  type OrganisationSettings,
} from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';
import { demoPassword, scenario } from '../demo/scenario.js';
import type { DemoPractice } from '../start/demo-practice.js';
import { writeClinics, writePractitioners } from './clinics.js';
import { HoursWriter } from './hours.js';
import { writeLaboratory } from './laboratory.js';
import { writePatients, writeUsers } from './people.js';

/** Project defaults, no source: mail two days and four hours ahead, or a call the day before. */
const SETTINGS: OrganisationSettings = {
  reminderLeadMinutes: { mail: [2880, 240], phone: [1440] },
  quietHours: { from: '20:00', to: '08:00' },
  phoneHoldMinutes: 15,
  provisionalHoldMinutes: 2880,
};

/** Opens the database and loads the demonstration practice as of `now`, unless it is there already. */
export async function loadDemo(databaseUrl: string, now: Date): Promise<DemoPractice> {
  const db = createDataSource({ url: databaseUrl, applicationName: 'archwright-demo', connections: 1 });
  await db.initialize();
  const isNew = await loadDemoPractice(db, now).finally(() => db.destroy());
  const accounts = scenario.users.map(({ role, signInName }) => ({ role, login: signInName, password: demoPassword }));
  return {
    isNew,
    accounts,
    firstSteps: [
      'Everybody in this practice is invented. Each role finds a first task on its screen; at the front desk, a patient calls.',
    ],
  };
}

/**
 * The practice of the scenario, in one transaction: all of it or nothing. Whether it is there is told by its sign-in
 * names, since rows of an organisation show themselves only to those who know its id.
 *
 * @returns false when it was there already
 */
export async function loadDemoPractice(db: DataSource, now: Date): Promise<boolean> {
  const [{ signInName }] = scenario.users;
  if (await db.getRepository(Directory).existsBy({ signInName })) return false;
  const organisationId = uuidv7();
  await inOrganisation(db, organisationId, async (tx) => {
    const { name, zone, locale } = scenario.organisation;
    await tx.insert(Organisation, { id: organisationId, name, kind: 'practice', locale, settings: SETTINGS });
    await tx.insert(Directory, { id: uuidv7(), kind: 'organisation', organisationId });
    const hours = new HoursWriter(tx, zone, now);
    const clinicIds = await writeClinics(tx, hours, now);
    const practitionerIds = await writePractitioners(tx, hours, clinicIds);
    const laboratoryId = await writeLaboratory(tx, hours, clinicIds);
    const desk = await writeUsers(tx, { organisationId, clinicIds, practitionerIds, laboratoryId });
    await publishPaths(tx, now);
    await writePatients(tx, desk, now);
  });
  return true;
}

async function publishPaths(tx: EntityManager, now: Date): Promise<void> {
  for (const document of shippedPaths) {
    const documentHash = createHash('sha256').update(JSON.stringify(document)).digest('hex');
    const { code, version } = document;
    await tx.insert(TreatmentPathVersion, { id: uuidv7(), code, version, document, documentHash, publishedAt: now });
  }
}
