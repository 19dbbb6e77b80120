import { sweep } from '@archwright/casework';
import { labOrderView, type CaseView, type LabOrderView } from '@archwright/contracts';
import {
  BenchPlace,
  CalendarRule,
  Directory,
  Laboratory,
  Organisation,
  Prescription,
  Resource,
  UserAccount,
  WorkCentre,
  inOrganisation,
  uuidv7,
} from '@archwright/records';
import type { DataSource, EntityManager } from 'typeorm';
import { addPerson, booked, caseOf, type Person, type TwoPractices } from './cases-client.js';

/** A laboratory that is an organisation of its own, and how the practice lists it. */
export interface Partner {
  readonly organisationId: string;
  readonly placeId: string;
  readonly bench: Person;
  /** The practice's own row that points at it. */
  readonly listedAs: string;
  rows<Result>(work: (tx: EntityManager) => Promise<Result>): Promise<Result>;
  sweepAt(now: Date): Promise<void>;
}

export async function openPartner(two: TwoPractices): Promise<Partner> {
  const { db } = two.api;
  const { organisationId, laboratoryId, placeId, listedAs } = await writePartner(db, two.organisationId);
  return {
    organisationId,
    placeId,
    listedAs,
    bench: await addPerson(two.api, organisationId, { role: 'lab', laboratoryIds: [laboratoryId] }),
    rows: (work) => inOrganisation(db, organisationId, work),
    sweepAt: async (now) => {
      await sweep(db, organisationId, now);
    },
  };
}

/** The laboratory's rows and the practice's row that points at it. */
export async function writePartner(
  db: DataSource,
  practiceId: string,
): Promise<Pick<Partner, 'organisationId' | 'placeId' | 'listedAs'> & { readonly laboratoryId: string }> {
  const organisationId = uuidv7();
  const [laboratoryId, placeId, listedAs] = [uuidv7(), uuidv7(), uuidv7()];
  const bench = { zone: 'Europe/London', cutOffLocal: '12:00', closedWeekdays: [6, 7] };
  await inOrganisation(db, organisationId, async (tx) => {
    await tx.insert(Organisation, {
      id: organisationId,
      name: 'Benchwork Example',
      kind: 'laboratory',
      locale: 'en',
      settings: {
        reminderLeadMinutes: { mail: [], phone: [] },
        quietHours: { from: '20:00', to: '08:00' },
        phoneHoldMinutes: 15,
        provisionalHoldMinutes: 2880,
      },
    });
    await tx.insert(Directory, { id: uuidv7(), kind: 'organisation', organisationId });
    await tx.insert(Laboratory, { ...bench, id: laboratoryId, name: 'Benchwork Example' });
    const workCentreId = uuidv7();
    await tx.insert(WorkCentre, { id: workCentreId, laboratoryId, code: 'wax', name: 'Wax' });
    await tx.insert(Resource, { id: placeId, kind: 'place', label: 'Wax 1' });
    const openHours = { startOn: '2027-01-04', startsLocal: '08:00', minutes: 540, exceptLocal: [] };
    await tx.insert(CalendarRule, { ...openHours, id: uuidv7(), laboratoryId, rrule: 'FREQ=DAILY' });
    await tx.insert(BenchPlace, { id: placeId, workCentreId, number: 1, label: 'Wax 1' });
  });
  await inOrganisation(db, practiceId, (tx) =>
    tx.insert(Laboratory, { ...bench, id: listedAs, name: 'Benchwork Example', partnerOrganisationId: organisationId }),
  );
  return { organisationId, laboratoryId, placeId, listedAs };
}

/** A booked case whose first work order is signed, as signing it leaves it behind. */
export async function aSignedCase(two: TwoPractices): Promise<{ readonly view: CaseView; readonly stageId: string }> {
  const view = await booked(two.desk, (await caseOf(two.desk)).id);
  const [first] = view.labSteps;
  const stage = view.stages.find(({ code }) => code === first?.afterStage);
  if (stage === undefined) throw new Error('Laboratory work follows a visit.');
  await two.rows(async (tx) => {
    const signedBy = (await tx.findOneByOrFail(UserAccount, { role: 'clinician' })).id;
    const content = {
      caseNumber: view.number,
      shade: 'A2',
      objects: [`${view.number}-preliminary-impression-upper-1`],
    };
    await tx.insert(Prescription, { id: uuidv7(), caseId: view.id, stageId: stage.id, content, signedBy });
  });
  return { view, stageId: stage.id };
}

export const sent = (
  two: TwoPractices,
  { listedAs }: Partner,
  stageId: string,
  more: Record<string, unknown> = {},
): Promise<LabOrderView> =>
  two.clinician.get('POST /lab-orders', labOrderView, { body: { stageId, laboratoryId: listedAs, ...more } });

export const answered = (
  person: Person,
  { id, version }: LabOrderView,
  body: Record<string, unknown>,
): Promise<LabOrderView> => person.get(`POST /lab-orders/${id}/actions`, labOrderView, { version, body });
