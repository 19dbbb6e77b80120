import fc from 'fast-check';
import { visitCalendar } from '@archwright/interop';
import {
  cancelledMessage,
  colleagueMessage,
  itineraryMessage,
  movedMessage,
  reminderMessage,
  type Addressee,
  type Message,
  type VisitFacts,
} from './compose.js';

const WAYS = {
  confirmUrl: 'https://p.example/v/c',
  askToMoveUrl: 'https://p.example/v/m',
  detailsUrl: 'https://p.example/v/d',
  phone: '+44 20 7946 0000',
};

function aVisit(changes: Partial<VisitFacts> = {}): VisitFacts {
  return {
    startMs: Date.parse('2027-01-28T09:20Z'),
    zone: 'Europe/London',
    address: '12 Mill Lane, Ludlow',
    ...changes,
  };
}
const someone = (locale: string, zone = 'Europe/London'): Addressee => ({ givenName: 'Ada', locale, zone });

function everyMessage(to: Addressee, visit: VisitFacts, caseNumber = 'A-00012'): Message[] {
  const about = { caseNumber, caseUrl: 'https://p.example/cases/1', locale: to.locale };
  return [
    reminderMessage(to, visit, WAYS),
    itineraryMessage(to, [visit, visit], WAYS),
    movedMessage(to, visit, visit.startMs - 86_400_000, WAYS),
    cancelledMessage(to, visit, WAYS.phone),
    ...TOPICS.map((topic) => colleagueMessage(topic, about)),
  ];
}

const TOPICS = ['decision', 'pause', 'settled', 'question', 'answer', 'rejection', 'lateness'] as const;

/** Words of the trade in the three languages; none may stand where a phone's lock screen or a colleague sees it. */
const CLINICAL =
  /dent|tooth|teeth|implant|impression|prosthe|jaw|bite|extract|vertical|tracing|placement|try-in|mm\b|zahn|zähn|prothes|abdruck|abform|kiefer|biss|سن|أسنان|فك|طقم|طبعة/iu;

describe('messages', () => {
  it('end a reminder with the practice’s own line, on one line, where there is one', () => {
    const bare = reminderMessage(someone('en'), aVisit(), WAYS).text;
    const own = reminderMessage(someone('en'), aVisit(), WAYS, { line: 'Please ring\nthe side door.' }).text;
    expect(own.startsWith(bare.trimEnd())).toBe(true);
    expect(own.slice(bare.trimEnd().length)).toBe('\n\n\u2068Please ring the side door.\u2069\n');
  });

  it('say what the practice has written in its own words, in that language alone, and fill its places once', () => {
    const texts = {
      reminder: { en: { subject: 'See you on {when}', text: 'Dear {name},\n{visit}\n{confirm} {strange}' } },
    };
    const own = reminderMessage({ ...someone('en'), givenName: '{visit}' }, aVisit(), WAYS, { texts });
    expect(own.subject).toBe('See you on Thursday, 28 January 2027 at 09:20');
    expect(own.text).toBe(
      'Dear \u2068{visit}\u2069,\nThursday, 28 January 2027 at 09:20\n\u206812 Mill Lane, Ludlow\u2069\nhttps://p.example/v/c {strange}\n',
    );
    expect(reminderMessage(someone('de'), aVisit(), WAYS, { texts })).toEqual(
      reminderMessage(someone('de'), aVisit(), WAYS),
    );
    expect(cancelledMessage(someone('en'), aVisit(), WAYS.phone, texts)).toEqual(
      cancelledMessage(someone('en'), aVisit(), WAYS.phone),
    );
  });

  it.each([
    ['en', 'Reminder: your appointment on Thursday, 28 January 2027 at 09:20'],
    ['de-AT', 'Erinnerung an Ihren Termin am Donnerstag, 28. Januar 2027 um 09:20'],
    ['ar-SY', 'تذكير بموعدك يوم الخميس، 28 يناير 2027 في 09:20'],
    ['fr', 'Reminder: your appointment on Thursday, 28 January 2027 at 09:20'],
  ])('says the time in the words of %s', (locale, subject) => {
    expect(reminderMessage(someone(locale), aVisit(), WAYS).subject).toBe(subject);
  });

  it('gives the clinic’s time, and the patient’s own where it differs', () => {
    const near = reminderMessage(someone('en'), aVisit(), WAYS).text;
    const far = reminderMessage(someone('en', 'America/New_York'), aVisit(), WAYS).text;
    expect(near).not.toContain('time zone');
    expect(far).toContain('09:20\nIn your own time zone: Thursday, 28 January 2027 at 04:20');
  });

  it('carries the ways to answer and leaves preparation behind its link', () => {
    const { text } = reminderMessage(someone('en'), aVisit(), WAYS);
    for (const way of Object.values(WAYS)) expect(text).toContain(way);
  });

  // Source: Unicode CLDR plural rules for Arabic: 1 one, 2 two, 3-10 few, 11-99 many, 100 other.
  it.each([
    [1, 'لديك موعد واحد:'],
    [2, 'لديك موعدان:'],
    [3, 'لديك 3 مواعيد:'],
    [11, 'لديك 11 موعدًا:'],
  ])('counts %i appointments in Arabic', (count, sentence) => {
    const visits = Array.from({ length: count }, () => aVisit());
    expect(itineraryMessage(someone('ar'), visits, WAYS).text).toContain(sentence);
  });

  it('marks what is provisional and what was before', () => {
    expect(itineraryMessage(someone('de'), [aVisit({ provisional: true })], WAYS).text).toContain('(noch nicht fest)');
    const moved = movedMessage(someone('de'), aVisit(), Date.parse('2027-01-27T10:00Z'), WAYS).text;
    expect(moved).toContain('Bisher: Mittwoch, 27. Januar 2027 um 10:00');
  });

  it('is complete in each language: no message shares its subject with another language', () => {
    const subjects = ['en', 'de', 'ar'].map((locale) =>
      everyMessage(someone(locale), aVisit()).map(({ subject }) => subject),
    );
    for (const [index, english] of (subjects[0] ?? []).entries()) {
      expect(new Set([english, subjects[1]?.[index], subjects[2]?.[index]]).size).toBe(3);
    }
  });

  it('shows nothing clinical and no name in a subject or a calendar title, whatever the data hold', () => {
    const word = fc.constantFrom(
      'Byron-Lovelace',
      'Zahnklinik',
      'Denture Care',
      'try-in',
      'vertical 62 mm',
      'extraction',
    );
    fc.assert(
      fc.property(
        word,
        word,
        fc.constantFrom('en', 'de', 'ar'),
        fc.integer({ min: 0, max: 400 }),
        (name, place, locale, day) => {
          const visit = aVisit({ startMs: Date.parse('2027-01-28T09:20Z') + day * 86_400_000, address: place });
          for (const { subject, calendarTitle } of everyMessage({ ...someone(locale), givenName: name }, visit)) {
            const calendar = visitCalendar(
              {
                uid: 'v1',
                sequence: 0,
                startMs: visit.startMs,
                endMs: visit.startMs + 60_000,
                summary: calendarTitle,
                state: 'confirmed',
              },
              { organiser: { mail: 'desk@p.example', name: 'Desk' }, attendeeMail: 'ada@example.org' },
              0,
            ).content;
            const shown = [subject, ...calendar.split('\r\n').filter((line) => line.startsWith('SUMMARY'))].join('\n');
            expect(shown).not.toContain(name);
            expect(shown).not.toContain(place);
            expect(shown).not.toMatch(CLINICAL);
          }
        },
      ),
      { seed: 20260105, numRuns: 60 },
    );
  });

  it('keeps the body free of clinical words too', () => {
    for (const locale of ['en', 'de', 'ar']) {
      for (const { text } of everyMessage(someone(locale), aVisit())) expect(text).not.toMatch(CLINICAL);
    }
  });

  it('folds line breaks in names, so that a body line cannot be made up', () => {
    const { text } = reminderMessage({ ...someone('en'), givenName: 'Ada\nhttps://evil.example' }, aVisit(), WAYS);
    expect(text.split('\n')[0]).toContain('Ada https://evil.example');
  });
});
