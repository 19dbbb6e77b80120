import {
  changeMessageTexts,
  faultsOfPlaces,
  MESSAGE_PLACES,
  type ChangeMessageTexts,
  type MessageTextsView,
  type MessageWords,
  type PatientMessage,
  type ShownText,
} from '@archwright/contracts';
import type { DraftPart } from '../drafts/differences.js';
import { messageTextWords as words } from '../words/message-texts.js';

/** Every text as it is typed, by message and language; one that reads as delivered is none of the practice's own. */
export type TextsDraft = Readonly<Record<string, MessageWords>>;
export type TextsErrors = Readonly<Record<string, Partial<MessageWords>>>;

export const keyOf = ({ message, language }: Pick<ShownText, 'message' | 'language'>): string =>
  `${message} ${language}`;

export const draftOfTexts = ({ texts }: MessageTextsView): TextsDraft =>
  Object.fromEntries(texts.map((shown) => [keyOf(shown), shown.own ?? shown.delivered]));

const bare = ({ subject, text }: MessageWords): MessageWords => ({ subject: subject.trim(), text: text.trim() });
export const isDelivered = (shown: ShownText, typed: MessageWords): boolean =>
  bare(typed).subject === bare(shown.delivered).subject && bare(typed).text === bare(shown.delivered).text;

/** Every text by its name, as it would be sent. */
export const tellTexts = ({ texts }: MessageTextsView, draft: TextsDraft): DraftPart[] =>
  texts.map((shown) => {
    const { subject, text } = draft[keyOf(shown)] ?? shown.delivered;
    return { key: keyOf(shown), label: words.textOf(shown, false), text: `${subject}\n${text}` };
  });

/** What would be sent, or what is wrong with which text. */
export function readTexts(
  { texts }: MessageTextsView,
  draft: TextsDraft,
): { body: ChangeMessageTexts } | { errors: TextsErrors } {
  const typed = texts.map((shown) => ({ shown, own: draft[keyOf(shown)] ?? shown.delivered }));
  const own = typed.filter(({ shown, own: mine }) => !isDelivered(shown, mine));
  const parsed = changeMessageTexts.safeParse({
    texts: own.map(({ shown: { message, language }, own: { subject, text } }) => ({
      message,
      language,
      subject,
      text,
    })),
  });
  if (parsed.success) return { body: parsed.data };
  const errors: Record<string, Partial<MessageWords>> = {};
  for (const { path } of parsed.error.issues) {
    const faulty = own[Number(path[1])];
    const field = path[2] === 'subject' ? 'subject' : 'text';
    if (faulty !== undefined)
      errors[keyOf(faulty.shown)] = {
        ...errors[keyOf(faulty.shown)],
        [field]: problemOf(faulty.shown.message, faulty.own, field),
      };
  }
  return { errors };
}

function problemOf(message: PatientMessage, own: MessageWords, field: keyof MessageWords): string {
  const faults = faultsOfPlaces(message, own).filter((fault) => fault.field === field);
  if (faults.length === 0) return words.need[field];
  return faults
    .map(({ kind, places }) =>
      kind === 'brace' ? words.need.brace : words.need[kind](places.map((place) => `{${place}}`)),
    )
    .join(' ');
}

/** Places that a text may have, each with what it is filled with; those it must have come first. */
export const placesOf = (message: PatientMessage): { place: string; says: string; isNeeded: boolean }[] => {
  const { needed, offered } = MESSAGE_PLACES[message];
  return [...needed, ...offered].map((place) => ({
    place: `{${place}}`,
    says: words.says(place),
    isNeeded: needed.includes(place),
  }));
};
