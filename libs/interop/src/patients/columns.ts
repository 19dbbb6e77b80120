import { PatientFileError } from '../errors.js';

export type DateOrder = 'ymd' | 'dmy' | 'mdy';

interface Column {
  /** Header names understood without a mapping, lower case without spaces and marks. */
  readonly names: readonly string[];
  readonly accepted: string;
  /** The value for the patient's contract; null when the cell cannot be read. Never called on an empty cell. */
  readonly read: (cell: string, order: DateOrder) => unknown;
}

const asText = (cell: string): unknown => cell;
const asWhole = (cell: string): unknown => (/^\d{1,4}$/.test(cell) ? Number(cell) : null);
const asList = (cell: string): string[] =>
  cell
    .toLowerCase()
    .split(/[\s,;|]+/)
    .filter((word) => word !== '');
const YES_OR_NO = 'yes or no';
const asYesNo = (cell: string): unknown => {
  if (/^(yes|y|true|1|ja|j|نعم)$/i.test(cell)) return true;
  return /^(no|n|false|0|nein|لا)$/i.test(cell) ? false : null;
};

/** A date in the stated order; a date of another order is refused rather than guessed, because 3/4 has two readings. */
function asDate(cell: string, order: DateOrder): unknown {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(cell)?.slice(1);
  const parts = iso ?? /^(\d{1,4})[./-](\d{1,2})[./-](\d{1,4})$/.exec(cell)?.slice(1);
  if (parts === undefined) return null;
  const at = (letter: string) => parts[(iso === undefined ? order : 'ymd').indexOf(letter)] ?? '';
  if (at('y').length !== 4) return null;
  return `${at('y')}-${at('m').padStart(2, '0')}-${at('d').padStart(2, '0')}`;
}

/** Columns of a patient file by the field of the patient's contract they fill; `externalId` is the file's own key. */
export const COLUMNS = {
  externalId: {
    names: ['externalid', 'patientid', 'patientnumber', 'patientno', 'id', 'patientennummer'],
    accepted: 'up to 100 characters',
    read: asText,
  },
  givenName: {
    names: ['givenname', 'firstname', 'forename', 'vorname'],
    accepted: '1 to 100 characters',
    read: asText,
  },
  familyName: {
    names: ['familyname', 'lastname', 'surname', 'nachname', 'familienname'],
    accepted: '1 to 100 characters',
    read: asText,
  },
  birthOn: {
    names: ['birthon', 'birthdate', 'dateofbirth', 'born', 'dob', 'geburtsdatum'],
    accepted: 'a date such as 1951-03-28, or in the date order stated for the file',
    read: asDate,
  },
  mail: {
    names: ['mail', 'email', 'mailaddress', 'emailaddress'],
    accepted: 'an address such as ada@example.org',
    read: asText,
  },
  phone: {
    names: ['phone', 'telephone', 'phonenumber', 'mobile', 'telefon'],
    accepted: 'a telephone number such as +44 20 7946 0000',
    read: asText,
  },
  locale: { names: ['locale', 'language', 'sprache'], accepted: 'a language tag such as en or de', read: asText },
  zone: { names: ['zone', 'timezone', 'zeitzone'], accepted: 'a time zone such as Europe/London', read: asText },
  companionName: { names: ['companionname', 'companion'], accepted: 'up to 100 characters', read: asText },
  companionPermitted: { names: ['companionpermitted'], accepted: YES_OR_NO, read: asYesNo },
  interpreter: { names: ['interpreter', 'interpreterlanguage'], accepted: 'up to 60 characters', read: asText },
  wheelchairRoom: { names: ['wheelchairroom', 'wheelchair'], accepted: YES_OR_NO, read: asYesNo },
  chairMinutesPerDay: { names: ['chairminutesperday'], accepted: 'whole minutes, 15 to 480', read: asWhole },
  travelMinutes: { names: ['travelminutes'], accepted: 'whole minutes, 0 to 240', read: asWhole },
  reminderConsent: { names: ['reminderconsent', 'reminders'], accepted: 'mail, phone or both', read: asList },
} as const satisfies Record<string, Column>;

export type ColumnField = keyof typeof COLUMNS;
const FIELDS = Object.keys(COLUMNS) as ColumnField[];
const REQUIRED = ['givenName', 'familyName', 'birthOn'] as const;

export interface Header {
  /** Position of each field in a row. */
  readonly positions: ReadonlyMap<ColumnField, number>;
  /** Names in the file that nothing was made of. */
  readonly ignored: readonly string[];
}

/**
 * Finds the columns by name.
 *
 * @param mapping header name of the file to field, such as `{ Surname: 'familyName' }`; wins over the known names
 * @throws {PatientFileError} when a mapping names no column or no field, a field is met twice, or a needed one is missing
 */
export function readHeader(cells: readonly string[], mapping: Readonly<Record<string, string>>): Header {
  const mapped = new Map<string, ColumnField>();
  for (const [name, target] of Object.entries(mapping)) {
    const field = FIELDS.find((known) => known === target);
    if (field === undefined) {
      throw refusal('mapping', `"${name}" is mapped to "${target}", which is no field`, FIELDS.join(', '));
    }
    if (!cells.some((cell) => cell.trim() === name.trim())) {
      throw refusal('mapping', `The mapped column "${name}" is not in the file`, cells.join(', '));
    }
    mapped.set(name.trim(), field);
  }
  const taken = new Set(mapped.values());
  const positions = new Map<ColumnField, number>();
  const ignored: string[] = [];
  cells.forEach((cell, position) => {
    const plain = cell.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
    const known = FIELDS.find(
      (field) => !taken.has(field) && (COLUMNS[field].names as readonly string[]).includes(plain),
    );
    const field = mapped.get(cell.trim()) ?? known;
    if (field === undefined) {
      ignored.push(cell);
    } else if (positions.has(field)) {
      throw refusal('header', `Column "${cell}" and another one both mean ${field}`, 'one column; map the right one');
    } else {
      positions.set(field, position);
    }
  });
  const missing = REQUIRED.filter((field) => !positions.has(field));
  if (missing.length > 0) {
    throw refusal(
      'header',
      `No column was found for ${missing.join(', ')}`,
      `${REQUIRED.join(', ')}, or a mapping to them`,
    );
  }
  return { positions, ignored };
}

function refusal(reason: 'header' | 'mapping', problem: string, accepted: string): PatientFileError {
  return new PatientFileError(reason, `${problem}. Accepted: ${accepted}.`);
}
