import fc from 'fast-check';
import { searchKeyOf, searchRange } from './search-key.js';

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
