import type { Filling, Told } from '@archwright/contracts';
import { longDate, timeOfDay } from '../time/wording.js';
import { localDateOf } from '../time/zone.js';
import { messages as english } from './en/told.js';
import { filled, inLanguage } from './messages.js';
import { enumerated } from './plural.js';
import { timeWords } from './time.js';

const said = await inLanguage(english, { de: () => import('./de/told.js'), ar: () => import('./ar/told.js') });

/** With its year, which nothing beside the sentence says. */
const whole = (date: string): string => longDate(date, '');

/** In which order a bench finds its work. */
export const DISPATCH_ORDER: Told = { code: 'dispatch-order', values: {} };

/** A sentence of the service in the language of the page. */
export function toldWords({ code, values }: Told): string {
  const words = Object.fromEntries(Object.entries(values).map(([name, value]) => [name, wordsOf(value)]));
  return filled(said.told[code], () => words)();
}

function wordsOf(value: Filling): string | number {
  if (typeof value !== 'object') return value;
  if ('moment' in value) {
    const { moment, zone } = value;
    return timeWords.dateAndTime(whole(localDateOf(Date.parse(moment), zone)), timeOfDay(moment, zone));
  }
  if ('day' in value) return whole(value.day);
  if ('title' in value) return value.title;
  return enumerated(value.list.map(toldWords));
}
