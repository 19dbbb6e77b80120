import type { messages as english } from '../en/practice-lists.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  toothList: {
    title: 'Zähne der Praxis',
    link: 'Zähne',
    sentence: 'Wird angeboten, wo Zähne ausgewählt werden; anderes lässt sich dort trotzdem eintippen.',
    loading: 'die Liste der Zähne',
    lists: { shades: 'Zahnfarben', moulds: 'Zahnformen', arrangements: 'Aufstellungen' },
    hint: 'Eines je Zeile, in der Reihenfolge, in der sie angeboten werden.',
    wrong: 'Bis zu 100 Zeilen mit je 60 Zeichen.',
    save: 'Listen speichern',
    saved: 'Gespeichert.',
  },
  checkFigures: {
    title: 'Was aus den Prüfungen wurde',
    link: 'Prüfungen',
    sentence:
      '{n, plural, =0 {Bisher wurde keine nicht bestandene Prüfung beiseitegesetzt.} one {Nicht bestandene Prüfungen einer Regel wurden beiseitegesetzt. Häufig beiseitegesetzt ist eine Frage an die Regel.} other {Nicht bestandene Prüfungen von {n} Regeln wurden beiseitegesetzt. Häufig beiseitegesetzt ist eine Frage an die Regel.}}',
    loading: 'die Zählung der Prüfungen',
    perRule: 'Gezählt wird je Regel, nie je Person.',
    columns: {
      rule: 'Regel',
      judged: 'Geprüfte Termine',
      failed: 'Nicht bestanden',
      setAside: 'Schriftlich beiseitegesetzt',
      wentOn: 'Nach spätem Befund weitergemacht',
      dismissed: 'Verworfene Meldungen',
    },
  },
};
