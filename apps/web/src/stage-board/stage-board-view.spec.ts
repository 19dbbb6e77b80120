import type { StageBoard } from '@archwright/contracts';
import { boardCards, LINE_WIDTH, waitingRows } from './stage-board-view.js';

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
  reason: 'Ready to begin.',
  told: { code: 'standing-ready', values: {} },
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
  told: { code: 'day-empty', values: {} },
  waiting: [],
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

it('says what waits, until when on the wall of its clinic, and what hangs on nothing yet', () => {
  const waiting = (id: string, more: Partial<StageBoard['waiting'][number]>): StageBoard['waiting'][number] => ({
    kind: 'alert',
    id,
    caseNumber: '26-0109',
    patientName: 'C. Example',
    reason: '',
    decideBy: null,
    zone: 'America/New_York',
    ...more,
  });
  const rows = waitingRows(
    {
      ...board(),
      waiting: [
        waiting('soon', { decideBy: '2027-01-05T16:20:00Z' }),
        waiting('none', { kind: 'late-finding', reason: 'Sibilants touch.' }),
      ],
    },
    '2027-01-05',
  );
  expect(rows.map(({ id, deadline }) => [id, deadline])).toEqual([
    ['soon', 'decide before Tue 5 Jan, 11:20'],
    ['none', 'nothing planned hangs on it yet'],
  ]);
  expect(rows[1]?.what).toContain('after the visit');
});

it('says where the visit stands once it is more than booked', () => {
  const [booked, begun] = boardCards(
    board(card({}), card({ startsAt: '2027-01-05T11:00:00Z', appointmentState: 'in-progress' })),
    'Europe/London',
  );
  expect([booked?.visitState, begun?.visitState]).toEqual([null, 'visit under way']);
});
