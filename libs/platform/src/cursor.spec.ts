import { CursorInvalidError, decodeCursor, encodeCursor, pageOf } from './cursor.js';

const id = '019b76da-a800-7000-8000-000000000001';

describe('cursor', () => {
  it('comes back as it went out', () => {
    expect(decodeCursor(encodeCursor({ sortKey: 'Łoś "x"', id }))).toEqual({ sortKey: 'Łoś "x"', id });
  });

  it.each(['', 'abc', Buffer.from('["a"]').toString('base64url'), Buffer.from('["a","no id"]').toString('base64url')])(
    'refuses %j',
    (text) => {
      expect(() => decodeCursor(text)).toThrow(CursorInvalidError);
    },
  );

  it('refuses a key that the database could not read', () => {
    expect(() => decodeCursor(encodeCursor({ sortKey: 'a\u0000', id }))).toThrow(CursorInvalidError);
    const ofADate = (key: string) => key === '2027-01-04';
    expect(decodeCursor(encodeCursor({ sortKey: '2027-01-04', id }), ofADate).id).toBe(id);
    expect(() => decodeCursor(encodeCursor({ sortKey: 'soon', id }), ofADate)).toThrow(CursorInvalidError);
  });

  it('leads on only when there is more', () => {
    const cursorOf = (sortKey: string) => ({ sortKey, id });
    expect(pageOf(['a', 'b'], 2, cursorOf)).toEqual({ items: ['a', 'b'], next: null });
    expect(pageOf(['a', 'b', 'c'], 2, cursorOf)).toEqual({
      items: ['a', 'b'],
      next: encodeCursor({ sortKey: 'b', id }),
    });
  });
});
