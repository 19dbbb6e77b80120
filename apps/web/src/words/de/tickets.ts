import type { messages as english } from '../en/tickets.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  tickets: {
    title: 'Auftragszettel',
    sentence:
      '{chosen, plural, =0 {Kein Zettel ist ausgewählt.} one {# Zettel, A6.} other {# Zettel, je ein Blatt A6.}} Ein Scan öffnet die Arbeit; kein Patient wird genannt.',
    loading: 'die Arbeit',
    link: 'Auftragszettel',
    linkOf: 'Auftragszettel: {job}',
    linkShort: 'Zettel',
    print: 'Drucken',
    backToBench: 'Zu Auslastung und Arbeit',
    backToCase: 'Zum Fall',
    choose: 'Drucken: {job}',
    all: 'Alle auswählen',
    allButNone: 'Keinen auswählen',
    job: '{number}, {step}',
    step: '{title}, {arches}',
    bench: 'Arbeitsplatz',
    begins: 'Beginn',
    handsOn: 'Arbeitszeit',
    minutes: '{minutes} min',
    due: 'Zurück bis',
    notBooked: 'Termin nicht gebucht',
    avoid: 'Nicht verwenden',
    code: 'Code, der {job} öffnet',
    scan: 'Scannen öffnet diese Arbeit',
    printed: 'Gedruckt {when}',
    none: 'Hier ist nichts mehr zu tun, also gibt es keinen Zettel zu drucken.',
    onlyHere:
      'Diese Seite steht unter {address}, und das kann nur dieser Rechner öffnen. Öffnen Sie sie vor dem Drucken unter ihrer Adresse im Netz, sonst kann kein Telefon die Codes öffnen.',
  },
  job: {
    title: '{number} · {step}',
    loading: 'die Arbeit',
    sentence: 'Eine Arbeit, wie ihr Zettel sie nennt.',
    gone: 'Diese Arbeit ist in Ihrem Labor nicht mehr geplant: Sie wurde verlegt, zurückgegeben oder neu begonnen. Suchen Sie den Fall nach der Nummer auf dem Zettel.',
    find: 'Fall suchen',
    wholeCase: 'Der ganze Fall',
    toBench: 'Zu Auslastung und Arbeit',
  },
};
