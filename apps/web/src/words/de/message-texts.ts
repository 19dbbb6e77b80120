import type { messages as english } from '../en/message-texts.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  messageTexts: {
    title: 'Nachrichten an Patienten',
    link: 'Nachrichten',
    sentence:
      'Was wann verschickt wird, in Ihren eigenen Worten, wo Sie welche schreiben. Was schon wartet, geht mit den Worten hinaus, die dann gelten.',
    loading: 'die Nachrichten',
    which: 'Nachricht und Sprache',
    textOf: '{message}, {language}{isOwn, select, yes { (eigene)} other {}}',
    elsewhere: 'Ebenfalls zu berichtigen: {texts}.',
    subject: 'Betreff',
    text: 'Text',
    caution:
      'Kein Wort über die Behandlung: Andere könnten die Nachricht sehen. Örtliche Regeln für Erinnerungen gelten.',
    places: 'Stellen in geschweiften Klammern werden beim Versand ausgefüllt:',
    needed: '{says} (nötig)',
    sample: 'Was der Patient bekommt',
    sampleHint: 'Nach dem gesicherten Stand, an einen erfundenen Patienten.',
    save: 'Nachrichten sichern',
    saved: 'Gesichert.',
    delivered: 'Ausgelieferten Text nehmen',
    messages: {
      reminder: 'Erinnerung',
      itinerary: 'Termine gebucht',
      moved: 'Termin verschoben',
      cancelled: 'Termin abgesagt',
    },
    languages: {
      en: 'Englisch',
      de: 'Deutsch',
      ar: 'Arabisch',
    },
    says: {
      name: 'Vorname des Patienten',
      visit: 'Tag, Zeit und Adresse des Termins',
      visits: 'Tag, Zeit und Adresse aller Termine',
      count: 'wie viele Termine es sind, als Satz',
      before: 'Tag und Zeit, die vorher galten',
      confirm: 'Adresse, um zuzusagen',
      move: 'Adresse, um eine andere Zeit zu erbitten',
      details: 'Adresse mit dem, was vorzubereiten ist',
      phone: 'Telefonnummer der Praxis',
    },
    need: {
      subject: 'Geben Sie 3 bis 120 Zeichen in einer Zeile ein.',
      text: 'Geben Sie 20 bis 3.000 Zeichen ein.',
      unknown: 'Die Stelle {places} gibt es hier nicht.',
      missing: 'Setzen Sie {places} in den Text.',
      brace: 'Geschweifte Klammern stehen paarweise um den Namen einer Stelle.',
    },
  },
};
