import type { ArrivalCheckView, RecallView, TransferView } from '@archwright/contracts';
import { arrivalRows, beforeVisitsSentence, recallRows, recallsUntil, transferRows } from './before-visits-view.js';

const check = (more: Partial<ArrivalCheckView>): ArrivalCheckView => ({
  id: 'a',
  version: 3,
  state: 'open',
  caseId: 'c',
  caseNumber: '27-0001',
  patientName: 'A. Example',
  appointmentId: 'v',
  clinicName: 'North clinic',
  visitAt: '2027-01-12T09:00:00Z',
  zone: 'Europe/London',
  stage: 'D2',
  missing: ['Wax rim', 'Base plate'],
  reason: 'Behind its plan.',
  raisedAt: '2027-01-09T09:00:00Z',
  decision: null,
  decisionNote: null,
  ...more,
});

const recall = (more: Partial<RecallView>): RecallView => ({
  id: 'r',
  version: 1,
  caseId: 'c',
  caseNumber: '27-0001',
  patientId: 'p',
  patientName: 'A. Example',
  phone: null,
  stage: 'R2',
  title: 'Second check',
  dueOn: '2027-01-05',
  state: 'due',
  reason: null,
  appointmentId: null,
  startsAt: null,
  ...more,
});

const transfer = (more: Partial<TransferView>): TransferView => ({
  id: 't',
  version: 1,
  state: 'proposed',
  caseId: 'c',
  caseNumber: '27-0001',
  patientName: 'A. Example',
  fromClinicId: 'north',
  fromClinicName: 'North clinic',
  toClinicId: 'east',
  toName: 'East clinic',
  reason: 'Moves house',
  decisionReason: null,
  proposedAt: '2027-01-04T09:00:00Z',
  decidedAt: null,
  sentence: 'From North clinic to East clinic: waits for an answer.',
  told: { code: 'transfer', values: { from: 'North clinic', to: 'East clinic', state: 'proposed', left: 0 } },
  visitsToCome: 0,
  labWork: [],
  objects: [],
  ...more,
});

it('puts the visit on top whose patient can be called for the shortest time, with all that is missing', () => {
  const rows = arrivalRows(
    [check({ id: 'later', visitAt: '2027-01-13T09:00:00Z' }), check({ id: 'first' })],
    '2027-01-10',
  );
  expect(rows.map(({ id }) => id)).toEqual(['first', 'later']);
  expect(rows[0]).toMatchObject({
    visit: 'Visit Tue 12 Jan, 09:00, North clinic',
    missing: 'Not there: Wax rim and Base plate.',
  });
});

it.each([
  ['2027-01-04', 'due Tue 5 Jan', false],
  ['2027-01-05', 'due Tue 5 Jan', false],
  ['2027-01-06', 'due since Tue 5 Jan', true],
])('says on %s of a check of 5 January: %s', (today, due, isOverdue) => {
  expect(recallRows([recall({})], today)[0]).toMatchObject({ due, isOverdue });
});

it('looks four weeks ahead for checks to book', () => {
  expect(recallsUntil('2027-02-15')).toBe('2027-03-15');
});

describe('the answers to a transfer', () => {
  const answers = (clinicIds: string[], more: Partial<TransferView> = {}) =>
    transferRows([transfer(more)], { clinicIds })[0]?.answers.map(({ key, label }) => [key, label]);

  it('are the word of the clinic that takes over; the one that asked may only withdraw', () => {
    expect(answers(['east'])).toEqual([
      ['accept', 'Take it over'],
      ['decline', 'Decline'],
    ]);
    expect(answers(['north'])).toEqual([['withdraw', 'Withdraw the proposal']]);
    expect(answers(['west'])).toEqual([]);
  });

  it('of a practice outside are noted by the clinic that asked', () => {
    expect(answers(['north'], { toClinicId: null })).toEqual([
      ['accept', 'They take it over'],
      ['decline', 'They decline'],
      ['withdraw', 'Withdraw the proposal'],
    ]);
  });
});

it('says in one sentence what waits, and leaves out what does not', () => {
  expect(beforeVisitsSentence(1, 0, 2)).toBe(
    '1 visit whose work has not come and 2 cases on the way to another clinic.',
  );
  expect(beforeVisitsSentence(0, 0, 0)).toBe('Nothing waits for a decision before the visits.');
});
