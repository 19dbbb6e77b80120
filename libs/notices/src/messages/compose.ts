import { toLocal } from '@archwright/calendar';
import { arabic } from './arabic.js';
import { english } from './english.js';
import { german } from './german.js';
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

/**
 * Reminder of one visit.
 *
 * @param ownLine what the practice adds in its own words, in the language of the message; empty: nothing
 */
export function reminderMessage(to: Addressee, visit: VisitFacts, ways: ReplyWays, ownLine = ''): Message {
  const words = wordsOf(to.locale);
  const subject = words.subject.reminder(whenText(words, visit.startMs, visit.zone));
  const own = ownLine === '' ? [] : ['', isolated(oneLine(ownLine))];
  return message(to, subject, [words.reminder, ...placeAndTime(words, visit, to), '', ...replies(words, ways), ...own]);
}

/** All visits of a chain, after it was confirmed or planned anew. */
export function itineraryMessage(
  to: Addressee,
  visits: readonly VisitFacts[],
  ways: Omit<ReplyWays, 'confirmUrl'>,
): Message {
  const words = wordsOf(to.locale);
  const form = new Intl.PluralRules(words.intlLocale).select(visits.length);
  const lines = visits.flatMap((visit) => [...placeAndTime(words, visit, to), '']);
  return message(to, words.subject.itinerary, [
    words.itinerary(visits.length, form),
    '',
    ...lines,
    words.askToMove,
    ways.askToMoveUrl,
    ...detailsAndPhone(words, ways),
  ]);
}

/** A visit that now begins at another time or place. */
export function movedMessage(to: Addressee, visit: VisitFacts, previousStartMs: number, ways: ReplyWays): Message {
  const words = wordsOf(to.locale);
  return message(to, words.subject.moved, [
    words.moved,
    ...placeAndTime(words, visit, to),
    words.before(whenText(words, previousStartMs, visit.zone)),
    '',
    ...replies(words, ways),
  ]);
}

/** A visit that will not take place. */
export function cancelledMessage(to: Addressee, visit: VisitFacts, phone: string): Message {
  const words = wordsOf(to.locale);
  return message(to, words.subject.cancelled, [
    words.cancelled,
    ...placeAndTime(words, { ...visit, provisional: false }, to),
    '',
    words.call(isolated(phone)),
  ]);
}

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

function message(to: Addressee, subject: string, lines: readonly string[]): Message {
  const words = wordsOf(to.locale);
  return {
    language: languageOf(to.locale),
    subject: oneLine(subject),
    text: [words.hello(isolated(oneLine(to.givenName))), '', ...lines, ''].join('\n'),
    calendarTitle: words.calendarTitle,
  };
}

/** The clinic's clock is what counts; the patient's own is added where it shows another time. */
function placeAndTime(words: Words, { startMs, zone, address, provisional }: VisitFacts, to: Addressee): string[] {
  const mark = provisional === true ? ` ${words.provisional}` : '';
  const differs = toLocal(startMs, zone) !== toLocal(startMs, to.zone);
  return [
    `${whenText(words, startMs, zone)}${mark}`,
    ...(differs ? [words.patientTime(whenText(words, startMs, to.zone))] : []),
    isolated(oneLine(address)),
  ];
}

function replies(words: Words, ways: ReplyWays): string[] {
  return [words.confirm, ways.confirmUrl, words.askToMove, ways.askToMoveUrl, ...detailsAndPhone(words, ways)];
}

function detailsAndPhone(words: Words, ways: Pick<ReplyWays, 'detailsUrl' | 'phone'>): string[] {
  return [words.details, ways.detailsUrl, words.call(isolated(ways.phone))];
}

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
