import type { CallTaskView } from '@archwright/contracts';
import { shapeCalls } from './call-list-view.js';

const task = (more: Partial<CallTaskView>): CallTaskView => ({
  id: 'a',
  version: 1,
  patientId: 'p',
  patientName: 'A. Example',
  phone: null,
  caseId: null,
  zone: 'Europe/London',
  reason: 'Missed the visit. Call, then plan it anew.',
  told: { code: 'call-missed', values: {} },
  state: 'open',
  dueAt: '2027-01-05T12:00:00Z',
  attempts: [],
  ...more,
});
const clock = { viewer: 'Europe/London', today: '2027-01-05' };

it('lists open calls first, earliest due on top, and says how earlier attempts went', () => {
  const rows = shapeCalls(
    {
      sentence: '',
      told: { code: 'calls-none', values: {} },
      items: [
        task({ id: 'done', state: 'done', dueAt: '2027-01-04T12:00:00Z' }),
        task({ id: 'late' }),
        task({
          id: 'early',
          dueAt: '2027-01-05T08:00:00Z',
          attempts: [{ at: '2027-01-05T08:30:00Z', outcome: 'no-answer', by: 'Desk' }],
        }),
      ],
    },
    clock,
  );
  expect(rows.map((row) => row.id)).toEqual(['early', 'late', 'done']);
  expect(rows[0]?.attempts).toEqual(['Tue 5 Jan, 08:30: no answer (Desk)']);
});
