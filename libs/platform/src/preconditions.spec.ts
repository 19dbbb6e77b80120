import {
  etagOf,
  PreconditionFailedError,
  PreconditionMissingError,
  requireVersion,
  versionOf,
} from './preconditions.js';

describe('version demanded by If-Match', () => {
  it('is the one that the ETag gave', () => {
    expect(versionOf(etagOf(17))).toBe(17);
  });

  it.each([undefined, '', '17', 'W/"17"', '*', '"17", "18"', '"x"'])('is refused when it is %j', (header) => {
    expect(() => versionOf(header)).toThrow(PreconditionMissingError);
  });

  it('must be the stored one', () => {
    expect(() => {
      requireVersion(3, 3);
    }).not.toThrow();
    expect(() => {
      requireVersion(3, 4);
    }).toThrow(PreconditionFailedError);
  });
});
