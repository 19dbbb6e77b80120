import type { AppointmentView, DayBoard } from '@archwright/contracts';
import { shapeDay } from './desk-day-view.js';

const visit = (more: Partial<AppointmentView>): AppointmentView => ({
  id: 'a',
  version: 1,
  caseId: 'c',
  caseNumber: '26-0147',
  patientId: 'p',
  patientName: 'A. Example',
  birthOn: '1949-03-04',
  phone: null,
  needs: { wheelchairRoom: false, interpreter: null, companion: null },
  clinicId: 'north',
  clinicName: 'North',
  zone: 'Europe/London',
  chairId: 'ch',
  chairLabel: 'Chair 1',
  place: 'clinic',
  homeTravelMinutes: null,
  address: null,
  accessNote: null,
  clinicianId: 'cl',
  clinicianName: 'First clinician',
  stages: ['D2'],
  title: 'Jaw relation',
  startsAt: '2027-01-05T09:00:00Z',
  endsAt: '2027-01-05T09:45:00Z',
  state: 'booked',
  ...more,
});
const NOON = Date.parse('2027-01-05T12:00:00Z');
const board = (...appointments: AppointmentView[]): DayBoard => ({
  on: '2027-01-05',
  sentence: '',
  told: { code: 'day-empty', values: {} },
  appointments,
});

it('sorts visits by time within their clinic, clinics by name', () => {
  const day = shapeDay(
    board(
      visit({ id: '1', startsAt: '2027-01-05T11:00:00Z' }),
      visit({ id: '2', clinicId: 'east', clinicName: 'East' }),
      visit({ id: '3' }),
    ),
    'clinic',
    'Europe/London',
    NOON,
  );
  expect(day.map((clinic) => [clinic.title, clinic.rows.map((row) => row.id)])).toEqual([
    ['East', ['2']],
    ['North', ['3', '1']],
  ]);
});

it.each([
  ['booked', ['arrive', 'miss'], 'Move or cancel'],
  ['arrived', ['start', 'miss', 'undo-arrival'], null],
  ['in-progress', ['finish'], null],
  ['completed', [], null],
  ['held', [], null],
  ['missed', [], 'Plan anew'],
] as const)('offers for a %s visit what comes next', (state, actions, change) => {
  const row = shapeDay(board(visit({ state })), 'clinic', 'Europe/London', NOON)[0]?.rows[0];
  expect(row?.actions.map(({ action }) => action)).toEqual(actions);
  expect(row?.change).toBe(change);
});

it('lets nobody miss a visit before it begins', () => {
  const early = Date.parse('2027-01-05T08:59:59Z');
  expect(shapeDay(board(visit({})), 'clinic', 'Europe/London', early)[0]?.rows[0]?.actions).toEqual([
    { action: 'arrive', label: 'Arrived' },
  ]);
});

it('can change only visits that belong to a case, and names the zone for a viewer elsewhere', () => {
  const row = shapeDay(board(visit({ caseId: null })), 'clinic', 'America/New_York', NOON)[0]?.rows[0];
  expect(row?.change).toBeNull();
  expect(row?.time).toBe('09:00');
  expect(row?.zoneNote).toBe('London time');
});

it('puts visits under their chair or their clinician, those at home apart', () => {
  const visits = board(
    visit({ id: '1' }),
    visit({ id: '2', chairId: 'ch2', chairLabel: 'Chair 2', clinicianId: 'cl2', clinicianName: 'Second clinician' }),
    visit({ id: '3', chairId: null, chairLabel: '', place: 'home' }),
  );
  const parts = (by: 'chair' | 'clinician') =>
    shapeDay(visits, by, 'Europe/London', NOON).map(({ title, rows }) => [title, rows.map(({ id }) => id)]);
  expect(parts('chair')).toEqual([
    ['North, At home', ['3']],
    ['North, Chair 1', ['1']],
    ['North, Chair 2', ['2']],
  ]);
  expect(parts('clinician')).toEqual([
    ['First clinician', ['1', '3']],
    ['Second clinician', ['2']],
  ]);
});

it('says how late somebody is who has not come, and nobody else', () => {
  const late = (state: AppointmentView['state'], at = '2027-01-05T09:12:30Z') =>
    shapeDay(board(visit({ state })), 'clinic', 'Europe/London', Date.parse(at))[0]?.rows[0]?.late;
  expect([late('booked'), late('provisional'), late('arrived'), late('missed')]).toEqual([
    '12 min late',
    '12 min late',
    null,
    null,
  ]);
  expect(late('booked', '2027-01-05T09:00:59Z')).toBeNull();
  expect(late('booked', '2027-01-06T09:00:00Z')).toBeNull();
});

it('says what has to be ready', () => {
  const needs = { wheelchairRoom: true, interpreter: 'Arabic', companion: 'Ada Example' };
  expect(shapeDay(board(visit({ needs })), 'clinic', 'Europe/London', NOON)[0]?.rows[0]?.needs).toEqual([
    'room for a wheelchair',
    'interpreter: Arabic',
    'may be told: Ada Example',
  ]);
});
