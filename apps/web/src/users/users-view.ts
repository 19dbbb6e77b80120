import type { PracticeView, UserView } from '@archwright/contracts';
import { dateAndTime } from '../time/wording.js';
import { practiceZone } from '../time/practice-zone.js';
import { enumerated } from '../words/plural.js';
import { userWords as words } from '../words/users.js';

export interface UserRow {
  readonly id: string;
  readonly name: string;
  readonly isActive: boolean;
  readonly signInName: string;
  readonly role: string;
  readonly where: string;
  readonly seen: string;
}

/** Those who may sign in first, each with where they work. */
export function userRows(users: readonly UserView[], practice: PracticeView): UserRow[] {
  const rows = users.map(({ id, name, isActive, signInName, role, clinicIds, laboratoryIds, lastSeenAt }) => {
    const places = [
      ...practice.clinics.filter((clinic) => clinicIds.includes(clinic.id)),
      ...practice.laboratories.filter((laboratory) => laboratoryIds.includes(laboratory.id)),
    ];
    return {
      ...{ id, name, isActive, signInName },
      role: words.roles[role],
      where: enumerated(places.map((place) => place.name)) || words.nowhere,
      seen: lastSeenAt === null ? words.notSignedIn : dateAndTime(lastSeenAt, practiceZone(practice), practice.today),
    };
  });
  return [...rows.filter(({ isActive }) => isActive), ...rows.filter(({ isActive }) => !isActive)];
}

export function usersSentence(rows: readonly UserRow[]): string {
  const active = rows.filter(({ isActive }) => isActive).length;
  return words.sentence(active, rows.length - active);
}
