import { CalendarFieldError } from '../errors.js';

// eslint-disable-next-line no-control-regex -- RFC 5545 forbids exactly these control characters in a value
const CONTROLS = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g;

/** Text for a TEXT value; the writer escapes backslash, comma, semicolon and newline itself. */
export function plainText(text: string): string {
  return text.replace(CONTROLS, '');
}

/** A name for a quoted parameter, where RFC 5545, section 3.1, allows neither a quotation mark nor a control. */
export function plainName(field: string, name: string): string {
  const plain = name
    .replace(/[\r\n\t]+/g, ' ')
    .replace(CONTROLS, '')
    .replace(/["\\]/g, "'")
    .trim();
  if (plain === '') throw new CalendarFieldError(field, 'is empty', 'a name of at least one character');
  return plain;
}

/** One bare address. Never quotes the value: a message may be logged. */
export function mailAddress(field: string, mail: string): string {
  if (!/^[^\s@<>()[\]\\,;:"]{1,64}@[^\s@<>()[\]\\,;:"]{1,255}$/.test(mail)) {
    throw new CalendarFieldError(
      `${field} mail`,
      'is not one bare mail address',
      'an address such as desk@example.org',
    );
  }
  return mail;
}

/** A URI value; comma and semicolon are percent-encoded, because the writer would escape them as if it were text. */
export function uriOf(url: string): string {
  const parsed = URL.canParse(url) ? new URL(url) : null;
  if (parsed === null || !/^https?:$/.test(parsed.protocol)) {
    throw new CalendarFieldError('url', 'is not a web address', 'an address that begins with https:// or http://');
  }
  return parsed.href.replaceAll(',', '%2C').replaceAll(';', '%3B');
}

/** iCalendar has no fractions of a second. */
export function wholeSecond(field: string, instantMs: number): Date {
  if (!Number.isSafeInteger(instantMs) || instantMs % 1000 !== 0) {
    throw new CalendarFieldError(field, `is ${String(instantMs)}`, 'milliseconds since 1970 on a whole second');
  }
  return new Date(instantMs);
}
