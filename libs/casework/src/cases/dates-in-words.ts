/** Such as `Thursday 4 February 2027`. */
export function dayInWords(at: Date, zone: string): string {
  return new Intl.DateTimeFormat('en-GB', {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: zone,
  }).format(at);
}

/** Such as `Thursday 4 February 2027 at 09:20`. */
export function momentInWords(at: Date, zone: string): string {
  return `${dayInWords(at, zone)} at ${timeInWords(at, zone)}`;
}

/** Such as `09:20`. */
export function timeInWords(at: Date, zone: string): string {
  return new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone: zone }).format(at);
}

/** A calendar date without a zone, such as `2027-02-04`, in words. */
export function dateInWords(on: string): string {
  return dayInWords(new Date(`${on}T00:00:00Z`), 'UTC');
}
