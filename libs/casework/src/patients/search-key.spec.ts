import fc from 'fast-check';
import { nameKeysOf, searchKeyOf, searchRange } from './search-key.js';

/** PostgreSQL's collation "C" compares bytes. */
const comesBefore = (one: string, other: string) => Buffer.compare(Buffer.from(one), Buffer.from(other)) < 0;
const isInside = (key: string, { from, until }: { from: string; until: string }) =>
  !comesBefore(key, from) && comesBefore(key, until);

describe('search keys of patients', () => {
  it.each([
    ['Müller', 'muller jorg'],
    ['MULLER, J', 'muller jorg'],
    ['muller  jo', 'muller jorg'],
  ])('finds by %s the key %s', (typed, key) => {
    expect(searchKeyOf({ familyName: 'Müller', givenName: 'Jörg' })).toBe(key);
    expect(isInside(key, searchRange(typed))).toBe(true);
  });

  it('leaves out names that begin otherwise', () => {
    expect(isInside('mullner ada', searchRange('Müller'))).toBe(false);
    expect(isInside('mulle ada', searchRange('Müller'))).toBe(false);
  });

  it.each(['Ada', 'ada van', 'Berg', 'Linden', 'van der berg'])('finds Ada van der Berg-Linden by %s', (typed) => {
    const keys = nameKeysOf({ familyName: 'van der Berg-Linden', givenName: 'Ada' });
    expect(keys.some((key) => isInside(key, searchRange(typed)))).toBe(true);
  });

  it('keeps one key per word, the family name first', () => {
    expect(nameKeysOf({ familyName: 'Mole', givenName: 'Ada' })).toEqual(['mole ada', 'ada mole']);
    expect(nameKeysOf({ familyName: 'Ada', givenName: 'Ada' })).toEqual(['ada ada']);
  });

  it('finds every name by any beginning of it', () => {
    const name = fc.stringMatching(/^[A-Za-zÄÖÜäöüéèñİşğ'-]{1,12}$/);
    fc.assert(
      fc.property(name, name, fc.nat(12), (familyName, givenName, length) => {
        const key = searchKeyOf({ familyName, givenName });
        expect(isInside(key, searchRange(familyName.slice(0, length + 1)))).toBe(true);
      }),
      { seed: 20261125 },
    );
  });
});
