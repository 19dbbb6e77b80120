import { slackMinutes } from './slack.js';

type Step = Parameters<typeof slackMinutes>[0][number];
const at = (time: string) => new Date(`2027-01-05T${time}:00Z`);
const step = (id: string, from: string, to: string, more: Partial<Step> = {}): Step => ({
  id,
  startsAt: at(from),
  endsAt: at(to),
  state: 'ready',
  leavesBy: at('16:00'),
  ...more,
});

describe('slack', () => {
  it('is what is left between the planned end of the stretch and its leaving', () => {
    const slack = slackMinutes([step('pour', '08:00', '09:00'), step('trim', '09:00', '12:00')], at('07:00'));
    expect(Object.fromEntries(slack)).toEqual({ pour: 240, trim: 240 });
  });

  it('shrinks by what the work is behind, as far as the gaps do not take it up', () => {
    const steps = [step('pour', '08:00', '09:00'), step('trim', '10:00', '12:00')];
    expect(slackMinutes(steps, at('08:30')).get('pour')).toBe(240);
    expect(slackMinutes(steps, at('10:30')).get('pour')).toBe(16 * 60 - (10 * 60 + 30 + 60 + 120));
  });

  it('counts a step that runs over as ending now', () => {
    const steps = [step('pour', '08:00', '09:00', { state: 'started' }), step('trim', '09:00', '12:00')];
    expect(slackMinutes(steps, at('09:20')).get('trim')).toBe(220);
  });

  it('does not let steps side by side push each other', () => {
    const steps = [step('upper', '08:00', '10:00'), step('lower', '08:00', '10:00')];
    expect(slackMinutes(steps, at('09:00')).get('lower')).toBe(16 * 60 - 11 * 60);
  });

  it('is negative when the work will not be done in time', () => {
    expect(slackMinutes([step('pour', '14:00', '15:00')], at('15:30')).get('pour')).toBe(-30);
  });

  it('is unknown while the visit is not booked, and nothing once the work is finished', () => {
    const steps = [
      step('pour', '08:00', '09:00', { leavesBy: null }),
      step('done', '07:00', '08:00', { state: 'finished' }),
    ];
    expect(Object.fromEntries(slackMinutes(steps, at('07:00')))).toEqual({ pour: null });
  });
});
