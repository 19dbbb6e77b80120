import { PatientFileError } from '../errors.js';

export type DateOrder = 'ymd' | 'dmy' | 'mdy';

interface Column {
  /** What people call it; understood as a header and as the target of a mapping. */
  readonly title: string;
  /** Other header names understood without a mapping, lower case without spaces and marks. */
  readonly names: readonly string[];
  readonly accepted: string;
  /** The value for the patient's contract; null when the cell cannot be read. Never called on an empty cell. */
  readonly read: (cell: string, order: DateOrder) => unknown;
}

const asText = (cell: string): unknown => cell;
const asWhole = (cell: string): unknown => (/^\d{1,4}$/.test(cell) ? Number(cell) : null);
const asConsent = (cell: string): unknown => {
  const words = cell.toLowerCase().split(/[\s,;|]+/);
  if (words.length > 1) return words.filter((word) => word !== '');
  return { none: [], no: [], both: ['mail', 'phone'] }[words[0] ?? ''] ?? words;
};
const asLanguage = (cell: string): unknown => {
  try {
    return Intl.getCanonicalLocales(cell.replaceAll('_', '-'))[0] ?? null;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
};
const YES_OR_NO = 'yes or no';
const asYesNo = (cell: string): unknown => {
  if (/^(yes|y|true|1|ja|j|نعم)$/i.test(cell)) return true;
  return /^(no|n|false|0|nein|لا)$/i.test(cell) ? false : null;
};

const asSex = (cell: string): unknown => {
  if (/^(female|f|weiblich|w)$/i.test(cell)) return 'female';
  return /^(male|m|männlich)$/i.test(cell) ? 'male' : null;
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

/** Columns of a patient file by the field of the patient's contract they fill; `reference` is the file's own key. */
export const COLUMNS = {
  reference: {
    title: 'reference',
    names: ['externalid', 'patientid', 'patientnumber', 'patientno', 'id', 'patientennummer'],
    accepted: 'the key of the person in the file, up to 100 characters',
    read: asText,
  },
  givenName: {
    title: 'given name',
    names: ['firstname', 'forename', 'vorname'],
    accepted: '1 to 100 characters',
    read: asText,
  },
  familyName: {
    title: 'family name',
    names: ['lastname', 'surname', 'nachname', 'familienname'],
    accepted: '1 to 100 characters',
    read: asText,
  },
  birthOn: {
    title: 'birth date',
    names: ['birthon', 'dateofbirth', 'born', 'dob', 'geburtsdatum'],
    accepted: 'a past date such as 1951-03-28, or in the date order stated for the file',
    read: asDate,
  },
  sex: {
    title: 'sex',
    names: ['gender', 'geschlecht'],
    accepted: 'female or male; empty where it is not stated',
    read: asSex,
  },
  mail: {
    title: 'mail',
    names: ['email', 'mailaddress', 'emailaddress'],
    accepted: 'an address such as ada@example.org',
    read: asText,
  },
  phone: {
    title: 'phone',
    names: ['telephone', 'phonenumber', 'mobile', 'telefon'],
    accepted: 'a telephone number such as +44 20 7946 0000',
    read: asText,
  },
  locale: {
    title: 'language',
    names: ['locale', 'sprache'],
    accepted: 'a language tag such as en or de',
    read: asLanguage,
  },
  zone: {
    title: 'time zone',
    names: ['zone', 'zeitzone'],
    accepted: 'a time zone such as Europe/London',
    read: asText,
  },
  companionName: { title: 'companion', names: ['companionname'], accepted: 'up to 100 characters', read: asText },
  companionPermitted: {
    title: 'companion permitted',
    names: [],
    accepted: YES_OR_NO,
    read: asYesNo,
  },
  interpreter: {
    title: 'interpreter',
    names: ['interpreterlanguage'],
    accepted: 'a language in words, up to 60 characters',
    read: asText,
  },
  wheelchairRoom: { title: 'wheelchair', names: ['wheelchairroom'], accepted: YES_OR_NO, read: asYesNo },
  chairMinutesPerDay: {
    title: 'chair minutes per day',
    names: [],
    accepted: 'whole minutes, 15 to 480',
    read: asWhole,
  },
  travelMinutes: { title: 'travel minutes', names: [], accepted: 'whole minutes, 0 to 240', read: asWhole },
  reminderConsent: {
    title: 'reminder consent',
    names: ['reminders', 'erinnerungen'],
    accepted: 'the ways that the person agreed to: mail, phone, both or none',
    read: asConsent,
  },
} as const satisfies Record<string, Column>;

export type ColumnField = keyof typeof COLUMNS;
const FIELDS = Object.keys(COLUMNS) as ColumnField[];
const REQUIRED: readonly ColumnField[] = ['givenName', 'familyName', 'birthOn'];

/** What a person calls the column of a field. */
export function titleOf(field: ColumnField): string {
  return COLUMNS[field].title;
}

/** Columns that a patient file may have, for a person who prepares one. */
export const patientColumns = FIELDS.map((field) => ({
  title: titleOf(field),
  accepted: COLUMNS[field].accepted,
  isRequired: REQUIRED.includes(field),
}));

export interface Header {
  /** Names as written, in the order of the cells. */
  readonly names: readonly string[];
  /** Position of each field in a row. */
  readonly positions: ReadonlyMap<ColumnField, number>;
  /** Names in the file that nothing was made of. */
  readonly ignored: readonly string[];
}

/**
 * Finds the columns by name.
 *
 * @param mapping header name of the file to column, such as `{ 'Surname at birth': 'family_name' }`; wins over the known names
 * @throws {PatientFileError} when a mapping names no column or no field, a field is met twice, or a needed one is missing
 */
export function readHeader(cells: readonly string[], mapping: Readonly<Record<string, string>>): Header {
  const mapped = new Map<string, ColumnField>();
  for (const [name, target] of Object.entries(mapping)) {
    const field = FIELDS.find((known) => isCalled(known, target));
    if (field === undefined) {
      const accepted = FIELDS.map(titleOf).join(', ');
      throw refusal('mapping', `"${name}" is mapped to "${target}", which is no column`, accepted);
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
    const field = mapped.get(cell.trim()) ?? FIELDS.find((known) => !taken.has(known) && isCalled(known, cell));
    if (field === undefined) {
      ignored.push(cell);
    } else if (positions.has(field)) {
      const accepted = 'one column; map the right one';
      throw refusal('header', `Column "${cell}" and another one both mean ${titleOf(field)}`, accepted);
    } else {
      positions.set(field, position);
    }
  });
  const missing = REQUIRED.filter((field) => !positions.has(field));
  if (missing.length > 0) {
    throw refusal(
      'header',
      `No column was found for ${missing.map(titleOf).join(', ')}`,
      `${REQUIRED.map(titleOf).join(', ')}, or a mapping to them`,
    );
  }
  return { names: cells.map((cell) => cell.trim()), positions, ignored };
}

function isCalled(field: ColumnField, name: string): boolean {
  const plain = (text: string) => text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
  const { title, names } = COLUMNS[field];
  return [plain(field), plain(title), ...names].includes(plain(name));
}

function refusal(reason: 'header' | 'mapping', problem: string, accepted: string): PatientFileError {
  return new PatientFileError(reason, `${problem}. Accepted: ${accepted}.`);
}
