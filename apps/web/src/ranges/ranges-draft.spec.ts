import type { MeasurementRangesView } from '@archwright/contracts';
import { draftOfRanges, readRanges } from './ranges-draft.js';

const origin = { source: 'A source', standing: 'published' };
const view: MeasurementRangesView = {
  version: 1,
  usual: [
    {
      key: 'OVD',
      name: 'Vertical dimension',
      group: null,
      unit: 'mm',
      plausible: { min: 30, max: 110 },
      shipped: { min: 55, max: 75 },
      own: { min: 50, max: 80 },
      ...origin,
    },
  ],
  limits: [
    { code: 'rest', meaning: 'Rest', unit: 'mm', shipped: 2, own: null, adjustable: { min: 1, max: 4 }, ...origin },
    { code: 'fixed', meaning: 'Fixed', unit: 'mm', shipped: 2, own: null, adjustable: null, ...origin },
  ],
  history: [],
  note: '',
};
const draft = { ...draftOfRanges(view), reason: 'Our patients' };

it('gives back what the practice has, and what is left empty goes back to what is shipped', () => {
  expect(readRanges(draft, view)).toEqual({
    body: { usual: { OVD: { min: 50, max: 80 } }, limits: {}, reason: 'Our patients' },
  });
  const emptied = { ...draft, usual: { OVD: { min: '', max: ' ' } }, limits: { rest: '2,5', fixed: '9' } };
  expect(readRanges(emptied, view)).toEqual({ body: { usual: {}, limits: { rest: 2.5 }, reason: 'Our patients' } });
});

it.each([
  { min: '80', max: '50' },
  { min: '50', max: '' },
  { min: '20', max: '80' },
  { min: 'x', max: '80' },
])('refuses the range %j at its row', (OVD) => {
  const reading = readRanges({ ...draft, usual: { OVD } }, view);
  expect('errors' in reading && reading.errors.usual.OVD).toContain('from 30 to 110 mm');
});

it('refuses a limit that is moved too far, and a change without a reason', () => {
  const reading = readRanges({ ...draft, limits: { rest: '9' }, reason: ' ' }, view);
  expect(reading).toMatchObject({
    errors: {
      limits: { rest: 'Enter a number from 1 to 4 mm, or nothing.' },
      reason: 'Say in 3 to 500 characters why; it stays on the record.',
    },
  });
});
