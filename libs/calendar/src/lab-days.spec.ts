import { CalendarTextError, NoLabWorkingDayError } from './errors.js';
import { acceptedOn, addLabWorkingDays, type LabDays } from './lab-days.js';
import { toInstantMs } from './zone.js';

const aLab = (fields: Partial<LabDays> = {}): LabDays => ({
  zone: 'Europe/Berlin',
  cutOffLocal: '12:00',
  openWeekdays: [1, 2, 3, 4, 5],
  closedOn: [],
  ...fields,
});
const arrives = (local: string, lab: LabDays): string => acceptedOn(toInstantMs(local, lab.zone), lab);

describe('laboratory working days', () => {
  // Worked by hand on the calendars of 2026: acceptance is day 0, the day of readiness the last one counted.
  it.each([
    ['2026-04-02T11:00', 5, ['2026-04-03', '2026-04-06'], '2026-04-13'],
    ['2026-03-06T11:00', 5, [], '2026-03-13'],
    ['2026-03-06T12:05', 5, [], '2026-03-16'],
    ['2026-12-23T11:00', 3, ['2026-12-25', '2026-12-28', '2027-01-01'], '2026-12-30'],
  ])('arrival %s and %i days are ready, with closures %j, on %s', (local, days, closedOn, readyOn) => {
    const lab = aLab({ closedOn });
    expect(addLabWorkingDays(arrives(local, lab), days, lab)).toBe(readyOn);
  });

  it('accept up to the very minute of the cut-off, by the clock of the laboratory', () => {
    const lab = aLab();
    expect(arrives('2026-03-05T12:00', lab)).toBe('2026-03-05');
    expect(acceptedOn(toInstantMs('2026-03-05T12:00', lab.zone) + 1, lab)).toBe('2026-03-06');
    expect(acceptedOn(Date.UTC(2026, 6, 1, 10), lab)).toBe('2026-07-01');
    expect(acceptedOn(Date.UTC(2026, 6, 1, 11), lab)).toBe('2026-07-02');
  });

  it('accept what arrives on a closed day on the next working day', () => {
    expect(arrives('2026-03-07T09:00', aLab())).toBe('2026-03-09');
    expect(arrives('2026-03-05T09:00', aLab({ closedOn: ['2026-03-05', '2026-03-06'] }))).toBe('2026-03-09');
  });

  it('count from the next working day when acceptance names a closed one', () => {
    expect(addLabWorkingDays('2026-03-07', 0, aLab())).toBe('2026-03-09');
    expect(addLabWorkingDays('2026-03-07', 1, aLab())).toBe('2026-03-10');
  });

  it('refuse a laboratory that never works and a cut-off that is not a time', () => {
    expect(() => addLabWorkingDays('2026-03-07', 1, aLab({ openWeekdays: [] }))).toThrow(NoLabWorkingDayError);
    expect(() => arrives('2026-03-05T09:00', aLab({ cutOffLocal: '24:00' }))).toThrow(CalendarTextError);
  });
});
