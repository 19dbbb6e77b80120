import type { ShownText } from '@archwright/contracts';
import { messages as english } from './en/message-texts.js';
import { filled, inLanguage } from './messages.js';
import { listed } from './plural.js';

const said = await inLanguage(english, {
  de: () => import('./de/message-texts.js'),
  ar: () => import('./ar/message-texts.js'),
});
const { messageTexts } = said;

const textOf = filled(messageTexts.textOf, (message: string, language: string, isOwn: boolean) => ({
  message,
  language,
  isOwn: isOwn ? 'yes' : 'no',
}));
const placesIn = (places: readonly string[]) => ({ places: listed(places) });
const says: Readonly<Record<string, string>> = messageTexts.says;

/** Words of the screen on which a practice writes what patients are sent. */
export const messageTextWords = {
  ...messageTexts,
  asDelivered: messageTexts.delivered,
  textOf: ({ message, language }: Pick<ShownText, 'message' | 'language'>, isOwn: boolean): string =>
    textOf(messageTexts.messages[message], messageTexts.languages[language], isOwn),
  elsewhere: filled(messageTexts.elsewhere, (texts: readonly string[]) => ({ texts: listed(texts) })),
  placeNeeded: filled(messageTexts.needed, (what: string) => ({ says: what })),
  says: (place: string): string => says[place] ?? place,
  need: {
    ...messageTexts.need,
    unknown: filled(messageTexts.need.unknown, placesIn),
    missing: filled(messageTexts.need.missing, placesIn),
  },
};
