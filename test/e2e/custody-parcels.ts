import { objectView, parcelView, practiceView, type ObjectView, type ParcelView } from '@archwright/contracts';
import { booked, caseOf, type Answer, type Person, type TwoPractices } from './cases-client.js';

/** A case whose chain is booked, with the clinic it is treated at and the laboratory that works on it. */
export interface TrackedCase {
  readonly caseId: string;
  readonly number: string;
  readonly clinicId: string;
  readonly laboratoryId: string;
}

export async function aTrackedCase({ desk }: TwoPractices): Promise<TrackedCase> {
  const view = await booked(desk, (await caseOf(desk)).id);
  const { laboratories } = await desk.get('GET /practice', practiceView);
  const [clinicId] = view.clinicIds;
  const [laboratory] = laboratories;
  if (clinicId === undefined || laboratory === undefined)
    throw new Error('The practice has a clinic and a laboratory.');
  return { caseId: view.id, number: view.number, clinicId, laboratoryId: laboratory.id };
}

/** An impression of the upper arch in the clinic, unless `over` says otherwise. */
export const registered = (
  person: Person,
  { caseId, clinicId }: TrackedCase,
  over: Record<string, unknown> = {},
): Promise<ObjectView> => {
  const body = { caseId, kind: 'impression', arch: 'upper', clinicId, ...over };
  return person.get('POST /objects', objectView, { body });
};

export const disinfected = (person: Person, { id }: ObjectView, at = '2027-01-04T06:50:00Z'): Promise<ObjectView> =>
  person.get(`POST /objects/${id}/disinfections`, objectView, { body: { agent: 'Aldehyde', method: 'immersion', at } });

export const objectNow = (person: Person, { id }: { readonly id: string }): Promise<ObjectView> =>
  person.get(`GET /objects/${id}`, objectView);

/** What the person at a hand-over reads off a label. */
export const label = ({ caseNumber, code }: Pick<ObjectView, 'caseNumber' | 'code'>) => ({ caseNumber, code });

export const packBody = (
  { clinicId, laboratoryId }: TrackedCase,
  objects: readonly ObjectView[],
  direction: 'to-lab' | 'to-clinic' = 'to-lab',
) => ({ direction, clinicId, laboratoryId, objects: objects.map(label) });

export const packed = (
  person: Person,
  treated: TrackedCase,
  objects: readonly ObjectView[],
  direction?: 'to-lab' | 'to-clinic',
): Promise<ParcelView> => person.get('POST /parcels', parcelView, { body: packBody(treated, objects, direction) });

export const acted = (
  person: Person,
  { id, version }: ParcelView,
  body: Record<string, unknown>,
): Promise<ParcelView> => person.get(`POST /parcels/${id}/actions`, parcelView, { version, body });

/** Handed over at one end and received at the other. */
export async function carried(sender: Person, receiver: Person, parcel: ParcelView): Promise<ParcelView> {
  const onItsWay = await acted(sender, parcel, { action: 'hand-over', carrier: 'Noon run' });
  return acted(receiver, onItsWay, { action: 'receive' });
}

export const reconcile = (
  person: Person,
  { id, version }: ParcelView,
  findings: readonly Record<string, unknown>[],
): Promise<Answer> => person.ask(`POST /parcels/${id}/reconciliation`, { version, body: { findings } });
