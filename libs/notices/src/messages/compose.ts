import { toLocal } from '@archwright/calendar';
import { arabic } from './arabic.js';
import { english } from './english.js';
import { german } from './german.js';
import { deliveredText, filledIn, type MessageText, type PatientMessage } from './texts.js';
import type { ColleagueTopic, Words } from './words.js';

/** Languages in which every message is complete; others fall back to the first. */
export const LANGUAGES = ['en', 'de', 'ar'] as const;
export type Language = (typeof LANGUAGES)[number];
const WORDS: Readonly<Record<Language, Words>> = { en: english, de: german, ar: arabic };

/** A message ready for a channel. `calendarTitle` is the neutral title for the calendar file beside it. */
export interface Message {
  readonly language: Language;
  readonly subject: string;
  readonly text: string;
  readonly calendarTitle: string;
}

export interface Addressee {
  readonly givenName: string;
  /** A language tag such as `de-AT`. */
  readonly locale: string;
  readonly zone: string;
}

/** The facts of a visit that may stand in a mail: when and where. What is done there is behind the signed link. */
export interface VisitFacts {
  readonly startMs: number;
  readonly zone: string;
  readonly address: string;
  readonly provisional?: boolean | undefined;
}

/** Web addresses made with `signLink`, and the clinic's telephone number. */
export interface ReplyWays {
  readonly confirmUrl: string;
  readonly askToMoveUrl: string;
  readonly detailsUrl: string;
  readonly phone: string;
}

/** Texts of the practice's own in place of the delivered ones, by language. */
export type OwnTexts = Partial<Record<PatientMessage, Partial<Record<Language, MessageText>>>>;

/** What a practice says in its own words. */
export interface OwnWords {
  readonly texts?: OwnTexts | undefined;
  /** Added at the end of a reminder, whatever its text; empty: nothing. */
  readonly line?: string | undefined;
}

/** Reminder of one visit. */
export function reminderMessage(to: Addressee, visit: VisitFacts, ways: ReplyWays, own: OwnWords = {}): Message {
  const words = wordsOf(to.locale);
  const when = whenText(words, visit.startMs, visit.zone);
  const line = own.line === undefined || own.line === '' ? '' : `\n\n${isolated(oneLine(own.line))}`;
  return message(to, 'reminder', own.texts, { when, ...oneVisit(words, visit, to), ...waysIn(ways) }, line);
}

/** All visits of a chain, after it was confirmed or planned anew. */
export function itineraryMessage(
  to: Addressee,
  visits: readonly VisitFacts[],
  ways: Omit<ReplyWays, 'confirmUrl'>,
  own?: OwnTexts,
): Message {
  const words = wordsOf(to.locale);
  const form = new Intl.PluralRules(words.intlLocale).select(visits.length);
  return message(to, 'itinerary', own, {
    count: words.itinerary(visits.length, form),
    visits: visits.map((visit) => placeAndTime(words, visit, to)).join('\n\n'),
    ...waysIn({ ...ways, confirmUrl: '' }),
  });
}

/** A visit that now begins at another time or place. */
export function movedMessage(
  to: Addressee,
  visit: VisitFacts,
  previousStartMs: number,
  ways: ReplyWays,
  own?: OwnTexts,
): Message {
  const words = wordsOf(to.locale);
  const before = whenText(words, previousStartMs, visit.zone);
  return message(to, 'moved', own, { before, ...oneVisit(words, visit, to), ...waysIn(ways) });
}

/** A visit that will not take place. */
export function cancelledMessage(to: Addressee, visit: VisitFacts, phone: string, own?: OwnTexts): Message {
  const gone = oneVisit(wordsOf(to.locale), { ...visit, provisional: false }, to);
  return message(to, 'cancelled', own, { ...gone, phone: isolated(phone) });
}

/** The text of a message that comes with the product. */
export const deliveredIn = (language: Language, kind: PatientMessage): MessageText =>
  deliveredText(WORDS[language], kind);

/** Until a person has decided, the plan stands. */
const NOTHING_MOVED: ReadonlySet<ColleagueTopic> = new Set(['decision', 'pause']);

/** For colleagues, who sign in to see more. The mail names the case by its number alone. */
export function colleagueMessage(
  topic: ColleagueTopic,
  { caseNumber, caseUrl, locale }: { caseNumber: string; caseUrl: string; locale: string },
): Message {
  const words = wordsOf(locale);
  const moved = NOTHING_MOVED.has(topic) ? [words.nothingMoved] : [];
  return {
    language: languageOf(locale),
    subject: oneLine(words.subject.colleagues[topic](caseNumber)),
    text: [words.colleagues[topic], ...moved, '', words.open, caseUrl, ''].join('\n'),
    calendarTitle: words.calendarTitle,
  };
}

/** The neutral title of a visit in a calendar that other people may see. */
export const calendarTitleIn = (locale: string): string => wordsOf(locale).calendarTitle;

/** The language in which somebody is written to: theirs where there are words for it, else the first. */
export function languageOf(locale: string): Language {
  const primary = locale.toLowerCase().split(/[-_]/)[0];
  return LANGUAGES.find((language) => language === primary) ?? 'en';
}

const wordsOf = (locale: string): Words => WORDS[languageOf(locale)];

function message(
  to: Addressee,
  kind: PatientMessage,
  own: OwnTexts | undefined,
  values: Readonly<Record<string, string>>,
  after = '',
): Message {
  const words = wordsOf(to.locale);
  const language = languageOf(to.locale);
  const { subject, text } = own?.[kind]?.[language] ?? deliveredText(words, kind);
  const all = { ...values, name: isolated(oneLine(to.givenName)) };
  return {
    language,
    subject: oneLine(filledIn(subject, all)),
    text: `${filledIn(text, all)}${after}\n`,
    calendarTitle: words.calendarTitle,
  };
}

const oneVisit = (words: Words, visit: VisitFacts, to: Addressee) => ({ visit: placeAndTime(words, visit, to) });

/** The clinic's clock is what counts; the patient's own is added where it shows another time. */
function placeAndTime(words: Words, { startMs, zone, address, provisional }: VisitFacts, to: Addressee): string {
  const mark = provisional === true ? ` ${words.provisional}` : '';
  const differs = toLocal(startMs, zone) !== toLocal(startMs, to.zone);
  return [
    `${whenText(words, startMs, zone)}${mark}`,
    ...(differs ? [words.patientTime(whenText(words, startMs, to.zone))] : []),
    isolated(oneLine(address)),
  ].join('\n');
}

const waysIn = ({ confirmUrl, askToMoveUrl, detailsUrl, phone }: ReplyWays) => ({
  confirm: confirmUrl,
  move: askToMoveUrl,
  details: detailsUrl,
  phone: isolated(phone),
});

function whenText(words: Words, ms: number, timeZone: string): string {
  return new Intl.DateTimeFormat(words.intlLocale, {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    timeZone,
  }).format(ms);
}

/** First-strong isolate (Unicode UAX 9): a number or a name keeps its own direction inside a line of the other one. */
const isolated = (text: string) => `\u2068${text}\u2069`;
const oneLine = (text: string) => text.replace(/\s+/g, ' ').trim();
