import { notToBePacked, notToBeUsed, requireFit } from './fit-for-use.js';

const NOW = new Date('2027-01-05T10:00:00Z');
const aThing = (over: Partial<Parameters<typeof notToBeUsed>[0]> = {}) => ({
  code: '27-0001-impression-upper-1',
  kind: 'impression' as const,
  state: 'in-use' as const,
  stateReason: null,
  useBy: null,
  ...over,
});

describe('whether an object may be worked with', () => {
  it('ends at its use-by, to the instant', () => {
    expect(notToBeUsed(aThing({ useBy: new Date('2027-01-05T10:00:01Z') }), NOW)).toBeNull();
    expect(notToBeUsed(aThing({ useBy: NOW }), NOW)).toContain('use-by passed at 2027-01-05T10:00:00.000Z');
  });

  it('gives the reason of a quarantine', () => {
    expect(notToBeUsed(aThing({ state: 'quarantined', stateReason: 'Torn border' }), NOW)).toContain('Torn border');
  });
});

describe('whether an object may be packed', () => {
  it('needs a declared disinfection, which does not help what may not be used', () => {
    expect(notToBePacked(aThing(), false, NOW)).toContain('No disinfection');
    expect(notToBePacked(aThing(), true, NOW)).toBeNull();
    expect(notToBePacked(aThing({ state: 'packed' }), true, NOW)).toContain('packed');
  });

  it('does not hold for a file', () => {
    expect(notToBePacked(aThing({ kind: 'scan-file' }), true, NOW)).toContain('file');
  });

  it('is refused with the reason and what would be accepted', () => {
    const refuse = () => {
      requireFit(aThing(), notToBePacked(aThing(), false, NOW), 'an object that is declared disinfected');
    };
    expect(refuse).toThrow(/No disinfection.*accepted: an object that is declared disinfected/);
  });
});
