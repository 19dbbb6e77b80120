import { Practitioner, PractitionerClinic, Resource, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { clinicScope } from '../patients/patient-access.js';
import { KeptHours, replaceHours } from './hours-rows.js';
import type { Hand, Keeper, RecordOf } from './keeper.js';
import { resourceStates, stateOf } from './resource-rows.js';

export const personKeeper: Keeper<'person'> = {
  table: 'resource',
  fixed: ['role'],
  retires: true,

  async list(tx) {
    const states = await resourceStates(tx, ['clinician', 'assistant']);
    const people = await tx.find(Practitioner, { order: { name: 'ASC', id: 'ASC' } });
    const places = await tx.find(PractitionerClinic, { order: { id: 'ASC' } });
    const kept = await KeptHours.load(tx);
    return people.map(({ id, role, name, skills }) => {
      const { version, isRetired } = stateOf(states, id);
      const workplaces = places
        .filter(({ practitionerId }) => practitionerId === id)
        .map(({ clinicId }) => ({ clinicId, hours: kept.hours({ practitionerId: id, atClinicId: clinicId }) }));
      return { id, version, isRetired, record: { kind: 'person', role, name, skills, workplaces } };
    });
  },

  async insert(tx, id, record, hand) {
    const { role, name, skills } = record;
    await tx.insert(Resource, { id, kind: role, label: name });
    await tx.insert(Practitioner, { id, role, name, skills });
    await replaceWorkplaces(tx, id, record, hand);
  },

  async replace(tx, id, record, hand) {
    const { name, skills } = record;
    await tx.update(Resource, { id }, { label: name });
    await tx.update(Practitioner, { id }, { name, skills });
    await replaceWorkplaces(tx, id, record, hand);
  },
};

/** At the clinics that the actor answers for; where else the person works was not shown to them and stays. */
async function replaceWorkplaces(
  tx: EntityManager,
  practitionerId: string,
  { workplaces }: RecordOf<'person'>,
  { actor }: Hand,
): Promise<void> {
  const scope = clinicScope(actor);
  const before = await tx.findBy(PractitionerClinic, { practitionerId });
  for (const { id, clinicId } of before) {
    if (scope !== null && !scope.includes(clinicId)) continue;
    await replaceHours(tx, { practitionerId, atClinicId: clinicId }, []);
    if (!workplaces.some((each) => each.clinicId === clinicId)) await tx.delete(PractitionerClinic, { id });
  }
  for (const { clinicId, hours } of workplaces) {
    const isNew = !before.some((each) => each.clinicId === clinicId);
    if (isNew) await tx.insert(PractitionerClinic, { id: uuidv7(), practitionerId, clinicId });
    await replaceHours(tx, { practitionerId, atClinicId: clinicId }, hours);
  }
}
