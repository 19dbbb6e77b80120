import { z } from 'zod';
import { version } from './primitives.js';

/** What patients are written, by what happened. */
const MESSAGES = ['reminder', 'itinerary', 'moved', 'cancelled'] as const;
const LANGUAGES = ['en', 'de', 'ar'] as const;
export type PatientMessage = (typeof MESSAGES)[number];

interface Places {
  /** Without it a patient would not know when to come or how to answer. */
  readonly needed: readonly string[];
  readonly offered: readonly string[];
  readonly inSubject: readonly string[];
}

/** Places in braces that a text has, filled in when it is sent. */
export const MESSAGE_PLACES: Readonly<Record<PatientMessage, Places>> = {
  reminder: { needed: ['visit', 'confirm', 'move', 'phone'], offered: ['name', 'details'], inSubject: ['when'] },
  itinerary: { needed: ['visits', 'move', 'phone'], offered: ['name', 'count', 'details'], inSubject: [] },
  moved: { needed: ['visit', 'before', 'move', 'phone'], offered: ['name', 'confirm', 'details'], inSubject: [] },
  cancelled: { needed: ['visit', 'phone'], offered: ['name'], inSubject: [] },
};

const words = z.strictObject({
  subject: z
    .string()
    .trim()
    .min(3)
    .max(120)
    .refine((text) => !/[\r\n]/.test(text), 'one line'),
  text: z.string().trim().min(20).max(3000),
});
export type MessageWords = z.output<typeof words>;

const ownText = words.extend({ message: z.enum(MESSAGES), language: z.enum(LANGUAGES) });

/** What is wrong with the places of a text; each says what would be accepted. */
export function faultsOfPlaces(
  message: PatientMessage,
  { subject, text }: MessageWords,
): { field: 'subject' | 'text'; kind: 'unknown' | 'missing' | 'brace'; places: string[] }[] {
  const { needed, offered, inSubject } = MESSAGE_PLACES[message];
  const known = [...needed, ...offered];
  const missing = needed.filter((place) => !text.includes(`{${place}}`));
  return [
    ...strange('subject', subject, inSubject),
    ...strange('text', text, known),
    ...(missing.length === 0 ? [] : [{ field: 'text' as const, kind: 'missing' as const, places: missing }]),
  ];
}

function strange<Field extends 'subject' | 'text'>(field: Field, text: string, known: readonly string[]) {
  const places = [...text.matchAll(/\{([^{}]*)\}/g)].map(([, place = '']) => place);
  const unknown = [...new Set(places.filter((place) => !known.includes(place)))];
  const left = text.replace(/\{[^{}]*\}/g, '');
  return [
    ...(unknown.length === 0 ? [] : [{ field, kind: 'unknown' as const, places: unknown }]),
    ...(/[{}]/.test(left) ? [{ field, kind: 'brace' as const, places: [] }] : []),
  ];
}

/** All texts of the practice's own; what is left out is sent as delivered. */
export const changeMessageTexts = z.strictObject({
  texts: z
    .array(
      ownText.superRefine((own, context) => {
        for (const { field, kind, places } of faultsOfPlaces(own.message, own))
          context.addIssue({ code: 'custom', path: [field], message: inWords(own.message, field, kind, places) });
      }),
    )
    .max(MESSAGES.length * LANGUAGES.length)
    .refine(
      (texts) => new Set(texts.map(({ message, language }) => `${message} ${language}`)).size === texts.length,
      'one text for each message and language',
    ),
});
export type ChangeMessageTexts = z.output<typeof changeMessageTexts>;

function inWords(
  message: PatientMessage,
  field: 'subject' | 'text',
  kind: 'unknown' | 'missing' | 'brace',
  places: readonly string[],
): string {
  const { needed, offered, inSubject } = MESSAGE_PLACES[message];
  const named = (list: readonly string[]): string => list.map((place) => `{${place}}`).join(', ');
  if (kind === 'missing') return `${named(places)} somewhere in the text`;
  if (kind === 'brace') return 'braces in pairs around the name of a place';
  const known = field === 'subject' ? inSubject : [...needed, ...offered];
  return known.length === 0 ? 'no place in braces' : `of places only ${named(known)}`;
}

const shownText = z.object({
  message: z.enum(MESSAGES),
  language: z.enum(LANGUAGES),
  /** The practice's own; null where it is sent as delivered. */
  own: words.nullable(),
  delivered: words,
  /** As an invented patient gets it now. */
  sample: words,
});
export type ShownText = z.output<typeof shownText>;

export const messageTextsView = z.object({ version, texts: z.array(shownText) });
export type MessageTextsView = z.output<typeof messageTextsView>;
