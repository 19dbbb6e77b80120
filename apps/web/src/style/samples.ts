import type { Line } from '../case-line/line-view.js';
import { ProblemError } from '../api/errors.js';

const DAY = 86_400_000;
const START = Date.UTC(2027, 0, 4, 9);
const at = (days: number, hours = 0): number => START + days * DAY + hours * 3_600_000;

const visit = (day: number, title: string, rest: Partial<Line['visits'][number]>): Line['visits'][number] => ({
  startMs: at(day),
  endMs: at(day, 1),
  title,
  state: 'to-come',
  firm: true,
  againstWish: false,
  ...rest,
});

/** A line with every state that its parts can be in. */
export const SAMPLE_LINE: Line = {
  zone: 'Europe/London',
  visits: [
    visit(0, 'Examination', { state: 'done' }),
    visit(9, 'Impressions', { state: 'now' }),
    visit(18, 'Jaw relation', { state: 'needs-person' }),
    visit(29, 'Trial', { againstWish: true }),
    visit(39, 'Placement', { firm: false }),
  ],
  bars: [
    { startMs: at(2), endMs: at(7), title: 'Custom trays', state: 'done' },
    { startMs: at(11), endMs: at(16), title: 'Bases and rims', state: 'now' },
    { startMs: at(31), endMs: at(37), title: 'Finish', state: 'to-come' },
  ],
  couriers: [
    { direction: 'to-lab', departMs: at(0, 6), arriveMs: at(1, 6) },
    { direction: 'to-clinic', departMs: at(7, 2), arriveMs: at(8, 6) },
    { direction: 'to-lab', departMs: at(9, 6), arriveMs: at(10, 6) },
  ],
};

export const SAMPLE_ROWS = [
  { id: 'a', head: 'Impressions', cells: ['Wed 13 Jan, 09:00', 'done'] },
  { id: 'b', head: 'Jaw relation', cells: ['Fri 22 Jan, 09:00', 'needs a person'] },
];

export const SAMPLE_REFUSAL = new ProblemError({
  type: 'about:blank',
  title: 'Not as it should be',
  status: 422,
  detail: 'Two fields need another look.',
  code: 'request.invalid',
  errors: [
    { path: 'restMm', problem: 'The rest dimension is missing', accepted: 'a number from 40 to 100 mm' },
    { path: 'shade', problem: 'The shade is too long', accepted: 'up to 100 characters' },
  ],
});
