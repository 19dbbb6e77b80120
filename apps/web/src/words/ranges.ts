import { messages as english } from './en/ranges.js';
import { filled, inLanguage } from './messages.js';
import { spelled } from './plural.js';

const said = await inLanguage(english, { de: () => import('./de/ranges.js'), ar: () => import('./ar/ranges.js') });
const { ranges } = said;
const named = (name: string) => ({ name });
const measuredBetween = (min: number, max: number, unit: string) => ({ min, max, unit });
const standings: Readonly<Record<string, string>> = ranges.standings;

/** Words of the screen on which a practice sets its own usual ranges and limits. */
export const rangeWords = {
  ...ranges,
  sentence: filled(ranges.sentence, (own: number) => ({ own })),
  nameOf: filled(ranges.nameOf, (name: string, group: string) => ({ name, group })),
  span: filled(ranges.span, measuredBetween),
  value: filled(ranges.value, (value: number, unit: string) => ({ value, unit })),
  source: filled(ranges.source, (source: string, standing: string) => ({
    source,
    standing: standings[standing] ?? spelled(standing),
  })),
  least: filled(ranges.least, named),
  most: filled(ranges.most, named),
  limit: filled(ranges.limit, named),
  needSpan: filled(ranges.needSpan, measuredBetween),
  needLimit: filled(ranges.needLimit, measuredBetween),
};
