import fc from 'fast-check';
import { HABITS, LANGUAGES } from '../words/language.js';
import { isCurrent, isUnread, readDate, typeDate } from './date-text.js';

const { en, de, ar } = HABITS;

describe('a typed date', () => {
  it.each([
    ['2027-01-04', en.locale, '2027-01-04'],
    [' 2027-01-04 ', de.locale, '2027-01-04'],
    ['4/1/2027', en.locale, '2027-01-04'],
    ['04.01.2027', de.locale, '2027-01-04'],
    ['٤/١/٢٠٢٧', ar.locale, '2027-01-04'],
    ['4 January 2027', en.locale, '2027-01-04'],
    ['Mon 4 jan 2027', en.locale, '2027-01-04'],
    ['Monday, 4 Sep 2028', en.locale, '2028-09-04'],
    ['Mo., 4. Januar 2027', de.locale, '2027-01-04'],
    ['4. März 1949', de.locale, '1949-03-04'],
    ['الاثنين، 4 يناير 2027', ar.locale, '2027-01-04'],
    ['29 February 2028', en.locale, '2028-02-29'],
  ])('reads %s in %s as %s', (text, locale, date) => {
    expect(readDate(text, locale)).toBe(date);
  });

  it.each([
    ['', en.locale, 'nothing'],
    ['tomorrow', en.locale, 'a word'],
    ['30/2/2027', en.locale, 'no day of its month'],
    ['29 February 2027', en.locale, 'no leap year'],
    ['1/13/2027', en.locale, 'the month first'],
    ['4/1/20', en.locale, 'half typed'],
    ['2027-01-1', en.locale, 'half typed'],
    ['4 Jan', en.locale, 'without its year'],
    ['4 Ja 2027', en.locale, 'too few letters for a month'],
    ['4 Ju 2027', en.locale, 'a name of two months'],
    ['4 Jan Feb 2027', en.locale, 'two months'],
    ['4 5 Jan 2027', en.locale, 'two days'],
    ['Foo 4 Jan 2027', en.locale, 'a word that is no weekday'],
    ['4 January 2027', ar.locale, 'another language'],
    ['0001-01-01', en.locale, 'before the year 1000'],
  ])('takes %j in %s for none: %s', (text, locale) => {
    expect(readDate(text, locale)).toBeNull();
  });

  it('leaves the weekday to the calendar, since a changed day leaves it behind', () => {
    expect(readDate('Mon 5 Jan 2027', en.locale)).toBe('2027-01-05');
  });

  it.each(LANGUAGES)('reads back every date as it is written in %s', (language) => {
    const { locale } = HABITS[language];
    const formats = (['long', 'short'] as const).flatMap((length) => [
      new Intl.DateTimeFormat(locale, {
        weekday: length,
        day: 'numeric',
        month: length,
        year: 'numeric',
        timeZone: 'UTC',
      }),
      new Intl.DateTimeFormat(locale, { day: 'numeric', month: length, year: 'numeric', timeZone: 'UTC' }),
    ]);
    fc.assert(
      fc.property(fc.integer({ min: -40_000, max: 40_000 }), fc.constantFrom(...formats), (day, format) => {
        const at = day * 86_400_000;
        expect(readDate(format.format(at), locale)).toBe(new Date(at).toISOString().slice(0, 10));
      }),
      { seed: 20270104 },
    );
  });
});

describe('what stands in a field', () => {
  it('stays while the date is the one that was typed, or the one from before', () => {
    expect(isCurrent(typeDate('4/1/2027', '', en.locale), '2027-01-04')).toBe(true);
    expect(isCurrent(typeDate('4/1/20', '2027-01-16', en.locale), '2027-01-16')).toBe(true);
    expect(isCurrent(typeDate('4/1/20', '2027-01-16', en.locale), '')).toBe(true);
    expect(isCurrent(typeDate('4/1/2027', '', en.locale), '2027-01-05')).toBe(false);
  });

  it('is unread where something stands there that is no date', () => {
    expect(isUnread(typeDate('soon', '', en.locale))).toBe(true);
    expect(isUnread(typeDate(' ', '2027-01-16', en.locale))).toBe(false);
    expect(isUnread(typeDate('4/1/2027', '', en.locale))).toBe(false);
  });
});
