import { noteServerDate, serverMs } from './server-clock.js';

const AT = Date.parse('2027-01-04T08:00:00Z');

it('counts by the machine until an answer shows another time, and by the service from then on', () => {
  expect(serverMs(AT)).toBe(AT);
  noteServerDate('Mon, 11 Jan 2027 08:00:00 GMT', AT);
  expect(serverMs(AT + 60_000)).toBe(Date.parse('2027-01-11T08:01:00.500Z'));
});

it('lets neither rounding nor a missing field change the time', () => {
  noteServerDate('Mon, 11 Jan 2027 08:00:00 GMT', AT);
  const before = serverMs(AT);
  noteServerDate('Mon, 11 Jan 2027 08:00:01 GMT', AT);
  noteServerDate(null, AT);
  noteServerDate('soon', AT);
  expect(serverMs(AT)).toBe(before);
});
