import { messages as english } from './en/figures.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/figures.js'), ar: () => import('./ar/figures.js') });
const { figures } = said;
const counted = (n: number) => ({ n });
const ofNeeded = (needed: number) => ({ needed });
const onAverage = (average: number, cases: number) => ({ average, cases });

const percentOf = filled(figures.percent, counted);

export const percent = (share: number): string => percentOf(Math.round(share * 100));

/** Words of the screen that shows how the practice does. */
export const figureWords = {
  ...figures,
  sentence: filled(figures.sentence, (outside: number, since: string) => ({ outside, since })),
  none: filled(figures.none, (titles: string) => ({ titles })),
  shareSentence: filled(figures.shareSentence, (events: number, size: number, months: number) => ({
    events,
    size,
    months,
    share: percent(events / size),
  })),
  valueSentence: {
    days: filled(figures.valueSentence.days, onAverage),
    visits: filled(figures.valueSentence.visits, onAverage),
  },
  values: { days: filled(figures.values.days, counted), visits: filled(figures.values.visits, counted) },
  span: filled(figures.span, (lower: string, upper: string) => ({ lower, upper })),
  pictureOf: filled(figures.pictureOf, (title: string, sentence: string) => ({ title, sentence })),
  standing: {
    ...figures.standing,
    'too-few-months': filled(figures.standing['too-few-months'], ofNeeded),
    'too-few-cases': filled(figures.standing['too-few-cases'], ofNeeded),
    charted: filled(figures.standing.charted, (outside: number) => ({ outside })),
  },
  use: {
    ...figures.use,
    sentence: filled(figures.use.sentence, (from: string, to: string) => ({ from, to })),
    hours: filled(figures.use.hours, (hours: number) => ({ hours })),
  },
};
