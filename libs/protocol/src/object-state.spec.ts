import { changeObjectState } from './object-state.js';

/** On the way out and back, before each step. */
const seen = ['in-use', 'packed', 'in-transit', 'in-use', 'packed'] as const;

describe('the state of an object', () => {
  it('goes to the laboratory and back through a parcel', () => {
    const way = ['pack', 'hand-over', 'receive', 'pack', 'take-out'] as const;
    const states = way.map((action, index) => changeObjectState(seen[index] ?? 'lost', action));
    expect(states).toEqual([...seen.slice(1), 'in-use']);
  });

  it('is never packed out of quarantine, nor used on its way', () => {
    expect(() => changeObjectState('quarantined', 'pack')).toThrow(/Allowed from there: .*in-use/);
    expect(() => changeObjectState('in-transit', 'give-to-patient')).toThrow(/Allowed from there: in-use, quarantined/);
  });

  it('is looked at before use when it turns up again', () => {
    expect(changeObjectState('lost', 'find')).toBe('quarantined');
    expect(changeObjectState('packed', 'set-aside')).toBe('quarantined');
  });

  it('ends when it is discarded', () => {
    expect(changeObjectState('lost', 'discard')).toBe('discarded');
    expect(() => changeObjectState('discarded', 'set-aside')).toThrow(/nothing, it is final/);
  });
});
