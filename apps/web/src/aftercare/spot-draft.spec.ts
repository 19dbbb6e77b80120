import { readAdjustment, readSpot } from './spot-draft.js';

const TODAY = '2027-01-05';
const place = { arch: 'lower', region: 'lingual-left' } as const;
const spot = { foundOn: TODAY, pain: '4', suspectedCause: 'long-border', note: ' ' };
const adjustment = { arch: 'lower', surface: 'border', what: 'Shortened.', amount: 'A light stroke.' };

it('sends a sore spot with what was typed, an empty note as none', () => {
  expect(readSpot(place, spot, TODAY)).toEqual({ body: { ...place, ...spot, pain: 4, note: null } });
});

it.each([
  [{ foundOn: '2027-01-06' }, { foundOn: 'Choose a day up to 2027-01-05.' }],
  [{ foundOn: '' }, { foundOn: 'Choose a day up to 2027-01-05.' }],
  [{ pain: '' }, { pain: 'Choose a number from 0 to 10.' }],
  [{ suspectedCause: '' }, { suspectedCause: 'Choose what may hurt here; "not known" is an answer too.' }],
])('refuses a sore spot with %j at its field', (typed, errors) => {
  expect(readSpot(place, { ...spot, ...typed }, TODAY)).toEqual({ errors });
});

it('asks for surface, what and how much of an adjustment', () => {
  const soreSpotId = '01a214c3-f532-70c8-9921-9375aa9b78dc';
  expect(readAdjustment(soreSpotId, adjustment)).toEqual({ body: { ...adjustment, soreSpotId } });
  const reading = readAdjustment(null, { arch: 'upper', surface: '', what: ' ', amount: '' });
  expect('errors' in reading && Object.keys(reading.errors)).toEqual(['surface', 'what', 'amount']);
});
