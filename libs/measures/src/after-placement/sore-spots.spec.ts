import { InvalidValueError } from '../errors.js';
import { soreSpotStatus, type SoreSpot } from './sore-spots.js';

const spot = (changes: Partial<SoreSpot> = {}): SoreSpot => ({
  arch: 'lower',
  region: 'lingual-left',
  foundOn: '2026-11-02',
  adjustedOn: ['2026-11-03'],
  healedOn: null,
  ...changes,
});

describe('sore spot counter', () => {
  it('asks for a referral from the fourteenth day after the first adjustment', () => {
    expect(soreSpotStatus(spot(), '2026-11-16')).toMatchObject({ state: 'watched', referOn: '2026-11-17' });
    expect(soreSpotStatus(spot(), '2026-11-17')).toMatchObject({ state: 'refer', referOn: '2026-11-17' });
  });

  it('is not restarted by a later adjustment, whatever the order of entry', () => {
    const twice = spot({ adjustedOn: ['2026-11-10', '2026-11-03'] });
    expect(soreSpotStatus(twice, '2026-11-17').state).toBe('refer');
  });

  it('counts from the finding while nothing was adjusted, and stops when healed', () => {
    expect(soreSpotStatus(spot({ adjustedOn: [] }), '2026-11-16').state).toBe('refer');
    expect(soreSpotStatus(spot({ healedOn: '2026-11-12' }), '2026-12-24')).toMatchObject({
      state: 'healed',
      referOn: null,
    });
  });

  it('refuses a region of the other jaw and a date that is none', () => {
    expect(() => soreSpotStatus(spot({ region: 'palate' }), '2026-11-17')).toThrow(InvalidValueError);
    expect(() => soreSpotStatus(spot(), '2026-02-30')).toThrow('2026-02-30');
  });
});
