import { EMPTY_CHANGE, readStateChange, type StateDraft } from './state-change-view.js';

const read = (typed: Partial<StateDraft>) => readStateChange({ ...EMPTY_CHANGE, ...typed });

describe('a change of the state of a case', () => {
  it('is sent with its reason alone, and a day to look again where the case is paused', () => {
    const typed = { reason: ' Back at home ', reviewOn: '2027-02-15' };
    expect(read({ ...typed, to: 'open' }).body).toEqual({ to: 'open', reason: 'Back at home', reviewOn: null });
    expect(read({ ...typed, to: 'paused' }).body?.reviewOn).toBe('2027-02-15');
  });

  it('is not sent without a reason, nor to nobody in particular', () => {
    const silent = read({ to: 'paused', reason: ' ' });
    expect([silent.body, Object.keys(silent.wrong)]).toEqual([null, ['reason']]);
    const { body, wrong } = read({ to: 'transferred', reason: 'moves house', outside: ' ' });
    expect([body, Object.keys(wrong)]).toEqual([null, ['outside']]);
  });

  it('names who goes on: a clinic before what was typed', () => {
    const typed = { to: 'transferred', reason: 'moves house', outside: 'Another practice' } as const;
    expect(read(typed).body).toMatchObject({ outsidePractice: 'Another practice' });
    const chosen = read({ ...typed, clinicId: '0197f3a0-0000-7000-8000-000000000001' }).body;
    expect(chosen).toMatchObject({ clinicId: '0197f3a0-0000-7000-8000-000000000001' });
    expect(chosen).not.toHaveProperty('outsidePractice');
  });
});
