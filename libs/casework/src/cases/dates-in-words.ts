/** Such as `Thursday 4 February 2027`. */
export function dayInWords(at: Date, zone: string): string {
  const part = partsOf(at, zone, { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' });
  return [part('weekday'), part('day'), part('month'), part('year')].join(' ');
}

/** Such as `Thursday 4 February 2027 at 09:20`. */
export function momentInWords(at: Date, zone: string): string {
  return `${dayInWords(at, zone)} at ${timeInWords(at, zone)}`;
}

/** Such as `09:20`. */
function timeInWords(at: Date, zone: string): string {
  const part = partsOf(at, zone, { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
  return `${part('hour')}:${part('minute')}`;
}

/** A calendar date without a zone, such as `2027-02-04`, in words. */
export function dateInWords(on: string): string {
  return dayInWords(new Date(`${on}T00:00:00Z`), 'UTC');
}

/** Parts are put together here: what stands between them differs from engine to engine. */
function partsOf(at: Date, timeZone: string, options: Intl.DateTimeFormatOptions) {
  const parts = new Intl.DateTimeFormat('en-GB', { ...options, timeZone }).formatToParts(at);
  return (type: Intl.DateTimeFormatPartTypes): string => parts.find((part) => part.type === type)?.value ?? '';
}
