import {
  addUser,
  changeUser,
  type AddUser,
  type ChangeUser,
  type PracticeView,
  type UserView,
} from '@archwright/contracts';
import type { DraftPart } from '../drafts/differences.js';
import { enumerated } from '../words/plural.js';
import { userWords as words } from '../words/users.js';

export interface UserDraft {
  name: string;
  signInName: string;
  role: string;
  mail: string;
  clinicIds: string[];
  laboratoryIds: string[];
  practitionerId: string;
  password: string;
}

export type UserErrors = Partial<Record<keyof UserDraft, string>>;

export const emptyUser: UserDraft = {
  name: '',
  signInName: '',
  role: 'front-desk',
  mail: '',
  clinicIds: [],
  laboratoryIds: [],
  practitionerId: '',
  password: '',
};

export const draftOfUser = ({ mail, practitionerId, ...user }: UserView): UserDraft => ({
  ...user,
  mail: mail ?? '',
  practitionerId: practitionerId ?? '',
  password: '',
});

/** What may be changed of an account, in words. */
export function tellUser(draft: UserDraft, { clinics, laboratories }: PracticeView): DraftPart[] {
  const named = (ids: readonly string[], places: readonly { id: string; name: string }[]): string =>
    enumerated(places.filter(({ id }) => ids.includes(id)).map(({ name }) => name));
  const people = clinics.flatMap((clinic) => clinic.clinicians);
  const texts = {
    name: draft.name,
    mail: draft.mail,
    role: words.roles[draft.role as UserView['role']],
    clinicIds: named(draft.clinicIds, clinics),
    laboratoryIds: named(draft.laboratoryIds, laboratories),
    practitionerId: people.find(({ id }) => id === draft.practitionerId)?.name ?? '',
  };
  return Object.entries(texts).map(([key, text]) => ({ key, label: words.fields[key as keyof typeof texts], text }));
}

/** What would be sent for a new account, or what is still missing, by field. */
export function readNewUser(draft: UserDraft): { body: AddUser } | { errors: UserErrors } {
  const { signInName, password } = draft;
  return read(draft, () => addUser.safeParse({ ...fieldsOf(draft), signInName, password }));
}

/** The same for one that is there: neither its sign-in name nor its password is among what is changed so. */
export function readUser(draft: UserDraft): { body: ChangeUser } | { errors: UserErrors } {
  return read(draft, () => changeUser.safeParse(fieldsOf(draft)));
}

type Parsed<Body> =
  { success: true; data: Body } | { success: false; error: { issues: readonly { path: readonly PropertyKey[] }[] } };

function read<Body>(draft: UserDraft, parse: () => Parsed<Body>): { body: Body } | { errors: UserErrors } {
  const parsed = parse();
  const lacksCalendar = draft.role === 'clinician' && draft.practitionerId === '';
  if (parsed.success && !lacksCalendar) return { body: parsed.data };
  const wrong = parsed.success ? [] : parsed.error.issues.map(({ path }) => String(path[0]));
  const fields = [...wrong, ...(lacksCalendar ? ['practitionerId'] : [])];
  const needed = Object.entries(words.need).filter(([field]) => fields.includes(field));
  return { errors: Object.fromEntries(needed) };
}

/** Fields that don't belong to the role are left behind, whatever was chosen before. */
function fieldsOf({ name, role, mail, clinicIds, laboratoryIds, practitionerId }: UserDraft) {
  return {
    ...{ name, role, clinicIds, laboratoryIds },
    mail: mail.trim() === '' ? null : mail.trim(),
    practitionerId: role === 'clinician' && practitionerId !== '' ? practitionerId : null,
  };
}

/** As the contract has it. */
export const LEAST_PASSWORD = 15;

const LETTERS = 'abcdefghjkmnpqrstuvwxyz23456789';
const GROUPS = 5;
const GROUP_LENGTH = 4;

/**
 * A password to hand over: no letter that is taken for another, in groups that are read out easily; about 99 bits.
 *
 * @param random whole numbers from 0 to below the given one
 */
export function suggestedPassword(random: (below: number) => number): string {
  const group = () => Array.from({ length: GROUP_LENGTH }, () => LETTERS.charAt(random(LETTERS.length))).join('');
  return Array.from({ length: GROUPS }, group).join('-');
}
