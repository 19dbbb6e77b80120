import type { SetupKind } from '@archwright/contracts';
import { setupWords } from '../words/setup.js';

/** How a value is entered. */
export type FieldShape =
  | 'text'
  | 'optional-text'
  | 'number'
  | 'time'
  | 'optional-time'
  | 'date'
  | 'tick'
  | 'zone'
  | 'clinic'
  | 'laboratory'
  | 'kit-code'
  | 'centre-code'
  | 'skills'
  | 'role'
  | 'measures'
  | 'weekdays'
  | 'batch'
  | 'hours'
  | 'departures'
  | 'workplaces'
  | 'closed-part';

export interface RecordField {
  readonly key: keyof typeof setupWords.fields | 'batch';
  readonly shape: FieldShape;
  /** Can't change once the record is there. */
  readonly isFixed?: true;
}

/** What is entered for each kind of record, in the order of the screen. */
export const RECORD_FIELDS: Readonly<Record<SetupKind, readonly RecordField[]>> = {
  clinic: [
    { key: 'name', shape: 'text' },
    { key: 'address', shape: 'text' },
    { key: 'phone', shape: 'optional-text' },
    { key: 'zone', shape: 'zone' },
    { key: 'hours', shape: 'hours' },
  ],
  chair: [
    { key: 'clinicId', shape: 'clinic', isFixed: true },
    { key: 'label', shape: 'text' },
    { key: 'wheelchairRoom', shape: 'tick' },
  ],
  kit: [
    { key: 'clinicId', shape: 'clinic', isFixed: true },
    { key: 'label', shape: 'text' },
    { key: 'code', shape: 'kit-code' },
    { key: 'reprocessingMinutes', shape: 'number' },
  ],
  person: [
    { key: 'name', shape: 'text' },
    { key: 'role', shape: 'role', isFixed: true },
    { key: 'skills', shape: 'skills' },
    { key: 'workplaces', shape: 'workplaces' },
  ],
  laboratory: [
    { key: 'name', shape: 'text' },
    { key: 'zone', shape: 'zone' },
    { key: 'cutOffLocal', shape: 'time' },
    { key: 'closedWeekdays', shape: 'weekdays' },
    { key: 'hours', shape: 'hours' },
  ],
  'work-centre': [
    { key: 'laboratoryId', shape: 'laboratory', isFixed: true },
    { key: 'name', shape: 'text' },
    { key: 'code', shape: 'centre-code', isFixed: true },
    { key: 'places', shape: 'number' },
    { key: 'batch', shape: 'batch' },
    { key: 'hours', shape: 'hours' },
  ],
  courier: [
    { key: 'name', shape: 'text' },
    { key: 'clinicId', shape: 'clinic', isFixed: true },
    { key: 'laboratoryId', shape: 'laboratory', isFixed: true },
    { key: 'toLabMinutes', shape: 'number' },
    { key: 'toClinicMinutes', shape: 'number' },
    { key: 'toLab', shape: 'departures' },
    { key: 'toClinic', shape: 'departures' },
  ],
  device: [
    { key: 'clinicId', shape: 'clinic', isFixed: true },
    { key: 'name', shape: 'text' },
    { key: 'measures', shape: 'measures', isFixed: true },
  ],
  closure: [
    { key: 'of', shape: 'closed-part', isFixed: true },
    { key: 'fromOn', shape: 'date' },
    { key: 'lastOn', shape: 'date' },
    { key: 'fromLocal', shape: 'optional-time' },
    { key: 'untilLocal', shape: 'optional-time' },
    { key: 'reason', shape: 'text' },
  ],
};

export const labelOf = (key: RecordField['key']): string =>
  key === 'batch' ? setupWords.fields.batchKind : setupWords.fields[key];
