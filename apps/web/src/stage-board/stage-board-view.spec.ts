import type { RemakeAlertView, StageBoard } from '@archwright/contracts';
import { alertRows, boardCards, LINE_WIDTH } from './stage-board-view.js';

const card = (more: Partial<StageBoard['cards'][number]>): StageBoard['cards'][number] => ({
  appointmentId: 'a',
  appointmentVersion: 1,
  appointmentState: 'booked',
  startsAt: '2027-01-05T09:00:00Z',
  zone: 'Europe/London',
  caseId: 'c',
  caseNumber: '26-0131',
  stageId: 's',
  stageCode: 'D2',
  title: 'Trial placement',
  patientName: 'A. Example',
  birthOn: '1949-03-04',
  verdict: 'may-go-on',
  reason: 'Base plates arrived',
  line: [
    { kind: 'visit', label: 'Impression', state: 'done' },
    { kind: 'lab', label: 'Bases', state: 'done' },
    { kind: 'alert', label: 'Tracing', state: 'needs-person' },
  ],
  ...more,
});
const board = (...cards: StageBoard['cards']): StageBoard => ({
  on: '2027-01-05',
  clinicName: 'North',
  sentence: '',
  cards,
});

it('orders cards by time and reads the line out in words', () => {
  const cards = boardCards(
    board(card({ stageId: 'late', startsAt: '2027-01-05T11:00:00Z' }), card({})),
    'Europe/London',
  );
  expect(cards.map((one) => one.stageId)).toEqual(['s', 'late']);
  expect(cards[0]).toMatchObject({ time: '09:00', birth: '4 Mar 1949', verdict: 'may go on', tone: 'go' });
  expect(cards[0]?.spoken).toBe('The case so far: Impression done, Bases done, Tracing needs a person');
});

it('keeps a long line within the drawing, laboratory below clinic', () => {
  const line = Array.from({ length: 30 }, (_, index) => ({
    kind: index % 2 ? ('lab' as const) : ('visit' as const),
    label: String(index),
    state: 'to-come' as const,
  }));
  const marks = boardCards(board(card({ line })), 'Europe/London')[0]?.marks ?? [];
  expect(Math.max(...marks.map((mark) => mark.x))).toBeLessThanOrEqual(LINE_WIDTH - 15);
  expect(marks[1]?.y).toBeGreaterThan(marks[0]?.y ?? Infinity);
});

it('puts the alert that must be decided first on top and leaves out decided ones', () => {
  const alert = (id: string, state: RemakeAlertView['state'], decideBy: string | null): RemakeAlertView => ({
    id,
    version: 1,
    caseId: 'c',
    caseNumber: '26-0109',
    patientName: 'C. Example',
    stage: 'D2',
    trigger: 'tracing-scatter',
    reason: '',
    returnToStage: 'D2',
    arches: ['upper'],
    discards: [],
    state,
    raisedAt: '2027-01-04T09:00:00Z',
    decideBy,
    proposals: [],
    noProposalReason: null,
  });
  const rows = alertRows(
    [
      alert('none', 'open', null),
      alert('done', 'accepted', '2027-01-05T08:00:00Z'),
      alert('late', 'open', '2027-01-06T08:00:00Z'),
      alert('soon', 'planned', '2027-01-05T11:20:00Z'),
    ],
    'Europe/London',
    '2027-01-05',
  );
  expect(rows.map((row) => row.id)).toEqual(['soon', 'late', 'none']);
  expect(rows[0]?.deadline).toBe('decide before Tue 5 Jan, 11:20');
});
