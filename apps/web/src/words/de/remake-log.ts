import type { messages as english } from '../en/remake-log.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  remakeLog: {
    title: 'Neu angefertigt',
    link: 'Was neu angefertigt wurde',
    sentence:
      '{remakes, plural, =0 {Nichts wurde neu angefertigt} one {# Neuanfertigung} other {# Neuanfertigungen}}{cases, plural, =0 {} one { in # Fall} other { in # Fällen}}, {from} bis {until}.',
    loading: 'was neu angefertigt wurde',
    from: 'Erster Tag',
    until: 'Letzter Tag',
    show: 'Zeigen',
    periodWrong: 'Geben Sie zwei Tage ein, den späteren als zweiten, höchstens 366 Tage auseinander.',
    note: 'Gezählt werden Neuanfertigungen, die die Praxis angenommen hat, nie nach Personen: Wer genau hinsieht, findet mehr.',
    byCause: 'Nach Ursache',
    byOrigin: 'Nach Ursprung',
    originNote: 'Ursprung: der Termin oder Laborschritt, von dem an alles neu angefertigt wurde.',
    columns: {
      name: 'Ursache',
      origin: 'Ursprung',
      remakes: 'Neuanfertigungen',
      byCheck: 'Durch eine Prüfung gefunden',
      cases: 'Fälle',
    },
    pictureOf: '{title}: {list}. Die Tabelle darunter sagt dasselbe.',
    bar: '{name} {remakes}',
    showThese: '{name}: {remakes, plural, one {# Neuanfertigung} other {# Neuanfertigungen}} zeigen',
    listTitle: 'Im Einzelnen',
    listOf: 'Im Einzelnen: {what}',
    both: '{cause}; {origin}',
    showAll: 'Alle zeigen',
    none: 'In dieser Zeit wurde nichts neu angefertigt. Eine Neuanfertigung erscheint hier, sobald die Praxis sie angenommen hat.',
    more: 'Mehr zeigen',
    entry: '{origin}, {arches}',
    found: 'gefunden bei „{stage}“',
    foundBy: { check: 'durch eine Prüfung', person: 'von einem Menschen' },
    back: 'zurück zu „{origin}“',
    discarded: 'verworfen: {what}',
    accepted: 'angenommen {when}',
    alert: 'Meldung ansehen',
    alertOf: 'Meldung zu {number} ansehen',
  },
};
