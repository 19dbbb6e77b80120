import { messages as english } from './en/itinerary.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, {
  de: () => import('./de/itinerary.js'),
  ar: () => import('./ar/itinerary.js'),
});
const { itinerary } = said;

/** Words of the sheet that a patient takes home. */
export const itineraryWords = {
  ...itinerary,
  title: filled(itinerary.title, (patient: string) => ({ patient })),
  sentence: filled(itinerary.sentence, (n: number, number: string) => ({ n, number })),
};
