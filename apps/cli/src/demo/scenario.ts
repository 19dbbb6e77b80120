/**
 * The demo practice: two clinics, one laboratory, obviously invented people. Only this file holds names and numbers;
 * how they become records is the loader's business.
 */

/** Local wall-clock hours on the days of an RFC 5545 rule. */
export interface Hours {
  rule: string;
  from: string;
  to: string;
}

const weekdays = 'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR';
const hours = (from: string, to: string, rule = weekdays): Hours => ({ rule, from, to });

export const demoPassword = 'a-quiet-bench-at-noon';

export const scenario = {
  organisation: { name: 'Quillon Example Practice', zone: 'Europe/London', locale: 'en' },
  clinics: [
    {
      key: 'north',
      name: 'North clinic',
      zone: 'Europe/London',
      address: '1 Example Quay, Exampleton',
      phone: '+44 20 7946 0100',
      opening: [hours('08:30', '17:30')],
      chairs: [
        { label: 'Chair 1', wheelchairRoom: true },
        { label: 'Chair 2', wheelchairRoom: false },
      ],
      kits: [
        { code: 'tracing-set', label: 'Tracing set A', reprocessingMinutes: 60 },
        { code: 'tracing-set', label: 'Tracing set B', reprocessingMinutes: 60 },
        { code: 'surgical-set', label: 'Surgical set A', reprocessingMinutes: 90 },
      ],
      devices: [
        { name: 'Caliper N1', measures: 'lengths' },
        { name: 'Plates of tracing set A', measures: 'tracings' },
      ],
      protectedMinutes: [{ chair: 'Chair 2', from: '12:00', minutes: 30, releasedHoursBefore: 24 }],
    },
    {
      key: 'east',
      name: 'East clinic',
      zone: 'Europe/London',
      address: '2 Sample Lane, Eastsample',
      phone: '+44 20 7946 0200',
      opening: [hours('09:00', '17:00', 'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH')],
      chairs: [{ label: 'Chair 1', wheelchairRoom: true }],
      kits: [{ code: 'tracing-set', label: 'Tracing set C', reprocessingMinutes: 60 }],
      devices: [{ name: 'Caliper E1', measures: 'lengths' }],
      protectedMinutes: [{ chair: 'Chair 1', from: '12:00', minutes: 30, releasedHoursBefore: 24 }],
    },
  ],
  clinicians: [
    {
      key: 'thorne',
      name: 'Dr Imogen Thorne-Example',
      clinics: ['north', 'east'],
      skills: ['complete-dentures', 'implant-surgery', 'oral-surgery'],
      working: {
        north: [hours('08:30', '17:00', 'FREQ=WEEKLY;BYDAY=MO,TU,TH')],
        east: [hours('09:00', '16:30', 'FREQ=WEEKLY;BYDAY=WE')],
      },
    },
    {
      key: 'vale',
      name: 'Dr Casimir Vale-Sample',
      clinics: ['north', 'east'],
      skills: ['complete-dentures', 'oral-surgery'],
      working: {
        north: [hours('09:00', '17:30', 'FREQ=WEEKLY;BYDAY=WE,FR')],
        east: [hours('09:00', '17:00', 'FREQ=WEEKLY;BYDAY=MO,TU,TH')],
      },
    },
  ],
  assistants: [
    { key: 'lark', name: 'Pia Lark-Example', clinics: ['north'], working: { north: [hours('08:30', '17:30')] } },
    { key: 'moss', name: 'Odo Moss-Example', clinics: ['north'], working: { north: [hours('08:30', '17:30')] } },
    { key: 'fenn', name: 'Una Fenn-Sample', clinics: ['east'], working: { east: [hours('09:00', '17:00')] } },
  ],
  laboratory: {
    name: 'Lantern Example Laboratory',
    zone: 'Europe/London',
    cutOff: '12:00',
    opening: [hours('08:00', '17:00')],
    workCentres: [
      { code: 'receiving', name: 'Receiving', places: 1 },
      { code: 'cast-room', name: 'Cast room', places: 2 },
      { code: 'scanning', name: 'Scanning', places: 1 },
      { code: 'design', name: 'Design', places: 2 },
      { code: 'printing', name: 'Printing', places: 2, batch: { kind: 'print-plate', size: 4 } },
      { code: 'wax', name: 'Wax', places: 2 },
      { code: 'articulator', name: 'Articulator', places: 1 },
      { code: 'tooth-set-up', name: 'Tooth set-up', places: 2 },
      { code: 'processing', name: 'Processing', places: 2 },
      { code: 'curing', name: 'Curing', places: 2, batch: { kind: 'curing-cycle', size: 6 } },
      { code: 'milling', name: 'Milling', places: 1 },
      { code: 'finishing', name: 'Finishing', places: 2 },
      { code: 'checking', name: 'Checking', places: 1 },
    ],
  },
  couriers: [
    { clinic: 'north', toLab: ['11:00', '17:00'], toClinic: ['08:15', '13:30'], transitMinutes: 30 },
    { clinic: 'east', toLab: ['16:30'], toClinic: ['08:30'], transitMinutes: 75 },
  ],
  users: [
    { signInName: 'desk@example.test', name: 'Robin Desk-Example', role: 'front-desk' },
    { signInName: 'bench@example.test', name: 'Sam Bench-Example', role: 'lab' },
    { signInName: 'chair@example.test', name: 'Dr Imogen Thorne-Example', role: 'clinician', clinician: 'thorne' },
    { signInName: 'vale@example.test', name: 'Dr Casimir Vale-Sample', role: 'clinician', clinician: 'vale' },
    { signInName: 'manager@example.test', name: 'Ada Manager-Example', role: 'manager' },
    { signInName: 'admin@example.test', name: 'Ira Admin-Example', role: 'administrator' },
  ],
  patients: [
    {
      given: 'Alma',
      family: 'Example',
      birthOn: '1949-03-04',
      weekdays: [2, 4],
      from: '09:00',
      to: '12:30',
      locale: 'en',
    },
    { given: 'Bertil', family: 'Sampleson', birthOn: '1941-09-17', weekdays: [], from: null, to: null, locale: 'de' },
    {
      given: 'Cosima',
      family: 'Placeholder',
      birthOn: '1955-01-30',
      weekdays: [1, 3],
      from: null,
      to: '13:00',
      locale: 'en',
    },
    { given: 'Dorian', family: 'Testwell', birthOn: '1962-05-12', weekdays: [], from: '13:00', to: null, locale: 'en' },
    { given: 'Edda', family: 'Invented', birthOn: '1947-11-09', weekdays: [], from: null, to: null, locale: 'en' },
    {
      given: 'Faris',
      family: 'Namely',
      birthOn: '1950-07-21',
      weekdays: [1, 2, 3, 4],
      from: null,
      to: null,
      locale: 'ar',
    },
    {
      given: 'Greta',
      family: 'Fictive',
      birthOn: '1938-02-28',
      weekdays: [],
      from: '10:00',
      to: '15:00',
      locale: 'en',
    },
    { given: 'Hollis', family: 'Madeup', birthOn: '1958-12-02', weekdays: [5], from: null, to: null, locale: 'en' },
  ],
} as const;
