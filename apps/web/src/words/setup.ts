import type { SetupKind } from '@archwright/contracts';
import { count, listed } from './plural.js';

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** Words of the screens on which a practice says what it consists of. */
export const setupWords = {
  title: 'What the practice consists of',
  link: 'Set-up',
  sentence: (clinics: number, people: number, retired: number) =>
    `${count(clinics, 'clinic', 'clinics')} and ${count(people, 'person', 'people')}; ` +
    `${count(retired, 'part is', 'parts are')} out of use. A change is shown with what it does to booked visits before it is saved.`,
  loading: 'the set-up',
  back: 'All of the set-up',
  kinds: {
    clinic: 'Clinic',
    chair: 'Chair',
    kit: 'Set of instruments',
    person: 'Person',
    laboratory: 'Laboratory',
    'work-centre': 'Work centre',
    courier: 'Courier',
    device: 'Measuring device',
    closure: 'Closure or absence',
  } satisfies Record<SetupKind, string>,
  groups: {
    clinic: 'Clinics',
    person: 'People',
    chair: 'Chairs',
    kit: 'Sets of instruments',
    laboratory: 'Laboratories',
    'work-centre': 'Work centres',
    courier: 'Couriers',
    device: 'Measuring devices',
    closure: 'Closures and absences',
  } satisfies Record<SetupKind, string>,
  name: 'Name',
  columns: { place: 'Where', about: 'What', hours: 'When' },
  add: (kind: SetupKind) => `Add: ${setupWords.kinds[kind].toLowerCase()}`,
  none: 'Nothing here yet.',
  retired: 'out of use',
  leaving: (from: string, when: string) => `${from}: ${when.charAt(0).toLowerCase()}${when.slice(1)}`,
  always: 'whenever the place is open',
  never: 'no hours yet',

  fields: {
    name: 'Name',
    label: 'Name',
    zone: 'Time zone',
    address: 'Address',
    phone: 'Telephone, if there is one',
    hours: 'Open',
    clinicId: 'Clinic',
    wheelchairRoom: 'Room for a wheelchair beside it',
    code: 'Word by which paths ask for it',
    measures: 'What is read with it',
    reprocessingMinutes: 'Minutes out of use after each visit',
    role: 'Role',
    skills: 'Skills',
    workplaces: 'Works at',
    cutOffLocal: 'Received that day until',
    closedWeekdays: 'Closed on',
    laboratoryId: 'Laboratory',
    batchKind: 'Work that shares one run',
    batchSize: 'Most pieces in one run',
    places: 'Places',
    toLabMinutes: 'Minutes to the laboratory',
    toClinicMinutes: 'Minutes to the clinic',
    toLab: 'Leaves the clinic',
    toClinic: 'Leaves the laboratory',
    of: 'What is closed, or who is away',
    fromOn: 'First day',
    lastOn: 'Last day',
    fromLocal: 'From, when not the whole first day',
    untilLocal: 'Until, when not the whole last day',
    reason: 'Reason',
  },
  choose: 'Choose',
  measures: { lengths: 'Lengths', angles: 'Angles', tracings: 'Tracings' },
  roles: { clinician: 'Clinician', assistant: 'Assistant' },
  batches: { '': 'None', 'curing-cycle': 'Curing cycle', 'print-plate': 'Print plate' },
  hoursOfCentre: 'Left empty: the hours of its laboratory.',

  days: DAYS,
  dayShort: DAYS.map((day) => day.slice(0, 3)),
  stretch: (n: number) => `Time ${String(n)}`,
  onDays: 'On',
  every: 'Every … weeks',
  from: 'From',
  until: 'Until',
  leaves: 'At',
  since: 'Counted from',
  rule: 'Rule (RFC 5545), such as FREQ=MONTHLY;BYDAY=1MO',
  asRule: 'Write it as a rule',
  asDays: 'Choose weekdays',
  addStretch: 'Add a time',
  removeStretch: (n: number) => `Remove time ${String(n)}`,
  next: (dates: readonly string[]) => (dates.length === 0 ? 'It never comes up.' : `Next: ${dates.join(', ')}.`),

  show: 'Show what it would do',
  make: {
    add: 'Add it',
    replace: 'Save the change',
    retire: 'Yes, take it out of use',
    return: 'Yes, put it back into use',
    drop: 'Yes, remove it',
  },
  otherChange: { retire: 'Take it out of use', return: 'Put it back into use', drop: 'Remove this closure' },
  problems: (n: number) => `${count(n, 'field needs', 'fields need')} another look. Nothing was saved.`,
  accepted: (what: string) => `Accepted: ${what}.`,

  nothing: (looked: number) =>
    looked === 0
      ? 'Nothing is booked yet, so nothing is touched.'
      : `None of ${count(looked, 'booked time', 'booked times')} to come is touched.`,
  touched: (n: number, looked: number) =>
    `${count(n, 'booked time', 'booked times')} of ${String(looked)} would have no place any more. ` +
    'They stay booked until somebody moves them.',
  settled: (n: number) => `${count(n, 'booked time', 'booked times')} without a place now would have one again.`,
  repairLink: 'Enter what falls away',
  repair: 'to see the repairs with the fewest calls, where a person, a chair or a bench is away for a time.',
  strandedTitle: 'What would be left without a place',
  strandedColumns: { when: 'When', what: 'What', who: 'Case', why: 'Why' },
  strandedKinds: { visit: 'Visit', 'lab-work': 'Laboratory work', courier: 'Courier' },
};

/** Codes in the words of the person who reads them. */
export const codesInWords = (codes: readonly string[]): string =>
  listed(codes.map((code) => code.replaceAll('-', ' ')));
