import { expandRule } from '@archwright/calendar';
import { escortTimes } from './escort-times.js';

const escort = { weekdays: [4, 2], from: '09:00', to: '12:30' };

it('opens on the days and at the hours on which somebody can, by the wall of the patient', () => {
  const rules = escortTimes(escort, 'Europe/London', '2027-03-22');
  const window = { startMs: Date.parse('2027-03-22T00:00:00Z'), endMs: Date.parse('2027-04-02T00:00:00Z') };
  const said = rules
    .flatMap((rule) => expandRule(rule, window))
    .map(({ startMs, endMs }) => [startMs, endMs].map((ms) => new Date(ms).toISOString().slice(5, 16)));
  // The clocks of London go forward on 28 March 2027: the wall says 09:00 before and after.
  expect(said).toEqual([
    ['03-23T09:00', '03-23T12:30'],
    ['03-25T09:00', '03-25T12:30'],
    ['03-30T08:00', '03-30T11:30'],
    ['04-01T08:00', '04-01T11:30'],
  ]);
});

it('is no limit where nobody has to bring the patient', () => {
  expect(escortTimes(null, 'Europe/London', '2027-03-22')).toEqual([]);
  expect(escortTimes(undefined, 'Europe/London', '2027-03-22')).toEqual([]);
});
