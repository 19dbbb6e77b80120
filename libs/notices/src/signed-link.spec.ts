import fc from 'fast-check';
import { signLink, verifyLink } from './signed-link.js';

const SECRET = 'a'.repeat(32);
const SUBJECT = {
  organisationId: '0193a1b2-0000-7000-8000-00000000000a',
  subjectId: '0193a1b2-0000-7000-8000-00000000000b',
};
const codeOf = (run: () => unknown): unknown => {
  try {
    return run();
  } catch (error) {
    return (error as { code?: unknown }).code;
  }
};

describe('signed links', () => {
  const token = signLink(SECRET, 'confirm', SUBJECT, 5000);

  it('opens what it was made for until its time, in characters that need no encoding', () => {
    expect(verifyLink(SECRET, 'confirm', token, 4999)).toEqual(SUBJECT);
    expect(encodeURIComponent(token)).toBe(token);
  });

  it('is refused after its time, for another purpose and under another secret', () => {
    expect(codeOf(() => verifyLink(SECRET, 'confirm', token, 5000))).toBe('notices.link-expired');
    expect(codeOf(() => verifyLink(SECRET, 'ask-to-move', token, 0))).toBe('notices.link-other-purpose');
    expect(codeOf(() => verifyLink('b'.repeat(32), 'confirm', token, 0))).toBe('notices.link-forged');
    expect(codeOf(() => verifyLink(SECRET, 'confirm', '', 0))).toBe('notices.link-forged');
    expect(codeOf(() => signLink('short', 'confirm', SUBJECT, 5000))).toBe('notices.link-secret');
  });

  it('is refused with any byte of what it says or of its signature changed', () => {
    const [body = '', mac = ''] = token.split('.');
    fc.assert(
      fc.property(fc.boolean(), fc.nat(), fc.integer({ min: 1, max: 255 }), (inBody, at, flip) => {
        const bytes = Buffer.from(inBody ? body : mac, 'base64url');
        const place = at % bytes.length;
        bytes[place] = (bytes[place] ?? 0) ^ flip;
        const changed = bytes.toString('base64url');
        const forged = inBody ? `${changed}.${mac}` : `${body}.${changed}`;
        expect(codeOf(() => verifyLink(SECRET, 'confirm', forged, 0))).toBe('notices.link-forged');
      }),
      { seed: 20260105 },
    );
  });
});
