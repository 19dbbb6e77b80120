import {
  setupRecord,
  type RecurringHours,
  type SetupKind,
  type SetupRecord,
  type SetupView,
} from '@archwright/contracts';
import { setupWords as words } from '../words/setup.js';
import { RECORD_FIELDS, type FieldShape } from './record-fields.js';

/** A record while it is typed: the fields of its kind, some of them not yet as they must be. */
export type RecordDraft = { readonly kind: SetupKind } & Readonly<Record<string, unknown>>;

const FULL_WEEK = 'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR';

/** Hours to begin with: the days on which most places are open. */
export const firstHours = (today: string): RecurringHours => ({
  startOn: today,
  startsLocal: '09:00',
  rrule: FULL_WEEK,
  minutes: 480,
  exceptLocal: [],
});

const EMPTY: Readonly<Record<FieldShape, unknown>> = {
  text: '',
  'optional-text': null,
  number: '',
  time: '12:00',
  'optional-time': null,
  date: '',
  tick: false,
  zone: '',
  clinic: '',
  laboratory: '',
  'kit-code': '',
  'centre-code': '',
  skills: [],
  role: 'clinician',
  measures: 'lengths',
  weekdays: [6, 7],
  batch: null,
  hours: [],
  departures: [],
  workplaces: [],
  'closed-part': { kind: 'clinic', id: '' },
};

/** A record of a kind with nothing typed yet; what there is only one of is chosen already. */
export function emptyDraft(kind: SetupKind, { entries, today }: SetupView): RecordDraft {
  const draft: Record<string, unknown> = {};
  for (const { key, shape } of RECORD_FIELDS[kind]) draft[key] = EMPTY[shape];
  const only = (wanted: SetupKind): string => {
    const [one, ...others] = entries.filter(({ record }) => record.kind === wanted);
    return one !== undefined && others.length === 0 ? one.id : '';
  };
  if ('clinicId' in draft) draft.clinicId = only('clinic');
  if ('laboratoryId' in draft) draft.laboratoryId = only('laboratory');
  if (kind === 'clinic' || kind === 'laboratory') draft.hours = [firstHours(today)];
  const zones = entries.flatMap(({ record }) => ('zone' in record ? [record.zone] : []));
  if ('zone' in draft) draft.zone = zones[0] ?? 'UTC';
  return { ...draft, kind };
}

/** The record that would be sent, or what is still wrong, by the path of its field. */
export function readDraft(draft: RecordDraft): { record: SetupRecord } | { errors: Record<string, string> } {
  const parsed = setupRecord.safeParse(draft);
  if (parsed.success) return { record: parsed.data };
  const errors: Record<string, string> = {};
  for (const { path, message } of parsed.error.issues)
    errors[path.map(String).join('.')] ??= words.accepted(plain(message));
  return { errors };
}

/** A message that says itself what is accepted stands alone. */
const plain = (message: string): string => message.replace(/^.*Accepted: (.*?)\.?$/s, '$1');
