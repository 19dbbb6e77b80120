import { createPatient, hashPassword, type Actor } from '@archwright/casework';
import { createPatient as patientFields } from '@archwright/contracts';
import { Directory, UserAccount, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { demoPassword, scenario } from '../demo/scenario.js';
import { idOf, type IdsByKey } from './clinics.js';

interface Practice {
  readonly organisationId: string;
  readonly clinicIds: IdsByKey;
  readonly practitionerIds: IdsByKey;
  readonly laboratoryId: string;
}

/** @returns the front desk, which enters the patients */
export async function writeUsers(tx: EntityManager, practice: Practice): Promise<Actor> {
  let desk: Actor | undefined;
  for (const user of scenario.users) {
    const actor: Actor = {
      organisationId: practice.organisationId,
      userId: uuidv7(),
      role: user.role,
      clinicIds: user.role === 'lab' ? [] : [...practice.clinicIds.values()],
      laboratoryIds: user.role === 'lab' || user.role === 'manager' ? [practice.laboratoryId] : [],
      practitionerId: 'clinician' in user ? idOf(practice.practitionerIds, user.clinician) : null,
    };
    await writeUser(tx, actor, user);
    if (user.role === 'front-desk') desk = actor;
  }
  if (desk === undefined) throw new Error('The scenario has no front desk.');
  return desk;
}

async function writeUser(
  tx: EntityManager,
  { organisationId, userId, role, clinicIds, laboratoryIds, practitionerId }: Actor,
  { name, signInName }: { readonly name: string; readonly signInName: string },
): Promise<void> {
  if (userId === null || role === 'service') throw new Error('Only a person signs in.');
  await tx.insert(UserAccount, {
    id: userId,
    name,
    role,
    passwordHash: await hashPassword(demoPassword),
    mail: signInName,
    locale: scenario.organisation.locale,
    clinicIds: [...clinicIds],
    laboratoryIds: [...laboratoryIds],
    practitionerId,
  });
  await tx.insert(Directory, { id: uuidv7(), kind: 'sign-in', organisationId, signInName, userId });
}

/** Every patient has agreed to reminders by mail; the addresses belong to nobody (RFC 2606, section 2). */
export async function writePatients(tx: EntityManager, desk: Actor, now: Date): Promise<void> {
  for (const { given, family, birthOn, locale, weekdays, from, to } of scenario.patients) {
    const fields = patientFields.parse({
      givenName: given,
      familyName: family,
      birthOn,
      mail: `${given.toLowerCase()}@example.test`,
      locale,
      zone: scenario.organisation.zone,
      reminderConsent: ['mail'],
      wishes: { weekdays: [...weekdays], from, to },
    });
    await createPatient(tx, desk, fields, now);
  }
}
