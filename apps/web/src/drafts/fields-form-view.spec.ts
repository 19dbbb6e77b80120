import { draftLike, placeRefused } from './fields-form-view.js';

const EMPTY = { agent: '', time: '' };

describe('a form of texts', () => {
  it('goes on with what was kept of the same form', () => {
    expect(draftLike({ agent: 'a spray', time: '09:00' }, EMPTY)).toEqual({ agent: 'a spray', time: '09:00' });
  });

  it.each([null, 'agent', { agent: 'a spray' }, { agent: 'a spray', time: 9 }])(
    'starts anew where an earlier version kept %j',
    (kept) => {
      expect(draftLike(kept, EMPTY)).toBeNull();
    },
  );

  it('says what was refused beside its field, also where the call has another name for it', () => {
    const refused = { agent: 'too long', 'disinfection.at': 'in the future' };
    expect(placeRefused(refused, EMPTY, { time: 'disinfection.at' })).toEqual({
      byField: { agent: 'too long', time: 'in the future' },
      isPlaced: true,
    });
  });

  it('leaves a refusal to be said for the whole form where a part of it is about no field', () => {
    expect(placeRefused({ agent: 'too long', version: 'missing' }, EMPTY, {})).toEqual({
      byField: { agent: 'too long' },
      isPlaced: false,
    });
    expect(placeRefused({}, EMPTY, {}).isPlaced).toBe(false);
  });
});
