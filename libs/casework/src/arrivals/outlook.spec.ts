import { outlookOf, type WorkForVisit } from './outlook.js';

const at = (hours: number) => new Date(Date.UTC(2027, 0, 5) + hours * 3_600_000);
const aStep = (over: Partial<WorkForVisit['steps'][number]> = {}) => ({
  title: 'Set-up',
  state: 'planned' as const,
  startsAt: at(12),
  endsAt: at(16),
  ...over,
});
const work = (over: Partial<WorkForVisit> = {}): WorkForVisit => ({
  visitAt: at(72),
  missing: ['Tooth set-up in wax'],
  obstacle: null,
  steps: [aStep()],
  runArrivesAt: null,
  ...over,
});

describe('the outlook of the work for a visit', () => {
  it('is good when nothing is missing, whatever the plan says', () => {
    expect(outlookOf(work({ missing: [], steps: [aStep({ state: 'rejected' })] }), at(10))).toEqual({
      state: 'arrived',
    });
  });

  it('counts on the plan while the plan holds: to the run, else to the end of the work', () => {
    expect(outlookOf(work(), at(10))).toEqual({ state: 'on-its-way', by: at(16) });
    const byRun = work({ steps: [aStep({ state: 'finished' })], runArrivesAt: at(30) });
    expect(outlookOf(byRun, at(20))).toEqual({ state: 'on-its-way', by: at(30) });
  });

  it.each([
    [{ steps: [aStep({ startsAt: at(9) })] }, 'should have begun'],
    [{ steps: [aStep({ state: 'started', endsAt: at(10) })] }, 'should have been finished'],
    [{ steps: [aStep({ state: 'rejected' })] }, 'is rejected'],
    [{ steps: [aStep({ state: 'finished', endsAt: at(9) })] }, 'should have arrived'],
    [{ runArrivesAt: at(80) }, 'after the visit'],
    [{ steps: [] }, 'should have arrived'],
    [{ obstacle: 'It is quarantined' }, 'It is quarantined'],
  ] satisfies [Partial<WorkForVisit>, string][])('is late with the reason: %o', (over, reason) => {
    const outlook = outlookOf(work(over), at(10));
    expect(outlook).toMatchObject({ state: 'late', reason: expect.stringContaining(reason) as string });
  });
});
