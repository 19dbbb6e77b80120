import type { messages as english } from '../en/lab-orders.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  labOrders: {
    title: 'Aufträge an andere Labore',
    titleAtLab: 'Aufträge aus Praxen',
    link: 'Aufträge an andere Labore',
    linkAtLab: 'Aufträge aus Praxen',
    sentence:
      '{out, plural, =0 {Kein Auftrag läuft} one {# Auftrag läuft} other {# Aufträge laufen}}{care, plural, =0 {.} one {, # braucht jemanden.} other {, # brauchen jemanden.}}',
    loading: 'die Aufträge',
    out: 'Laufend',
    over: 'Erledigt',
    none: 'Noch ist kein Auftrag verschickt. Arbeit, die bei einem eigenständigen Labor bestellt ist, erscheint hier mit Antwort und Termin.',
    noneAtLab:
      'Noch hat keine Praxis hier Arbeit bestellt. Ein Auftrag erscheint hier, sobald eine Praxis ihn geschickt hat.',
    more: 'Frühere zeigen',
    states: {
      ordered: 'wartet auf Antwort',
      accepted: 'angenommen',
      declined: 'abgelehnt',
      withdrawn: 'zurückgezogen',
      finished: 'fertig',
    },
    care: {
      unanswered: 'seit mehr als einem Tag ohne Antwort',
      'needed-past': 'schon gebraucht, ohne Antwort',
      'promised-late': 'später zugesagt als gebraucht',
      overdue: 'zugesagter Tag ist vorbei, nicht fertig',
    },
    work: '{steps}, {arches}',
    to: 'an {laboratory}',
    from: 'von {practice}, {clinic}',
    sent: 'geschickt {when}',
    needed: 'gebraucht {when}',
    promised: 'zugesagt {when}',
    declined: 'Abgelehnt: {reason}',
    about: 'Auftrag {number}',
    contents: 'Werte und Gegenstände',
    noObjects: 'Es werden keine Gegenstände verschickt; die Arbeit geht als Dateien.',
    done: 'Vermerkt: {what}, Auftrag {number}.',
    send: {
      title: 'Arbeit bei einem anderen Labor bestellen',
      open: 'Labor wählen',
      what: 'Unterschriebene Werte, Objekte und Arbeitsschritte gehen unter der Fallnummer hinaus, ohne Namen und Geburtsdatum. Zeit an den eigenen Arbeitsplätzen wird frei, und die Arbeit wartet, bis das Labor antwortet.',
      laboratory: 'Labor',
      choose: 'Bitte wählen',
      laboratoryMissing: 'Wählen Sie das Labor, das sie ausführt.',
      day: 'Zurück gebraucht am (leer: zum Beginn des nächsten Termins)',
      time: 'Zurück gebraucht um',
      timeMissing: 'Geben Sie Tag und Uhrzeit ein, oder lassen Sie beides leer.',
      send: 'Auftrag senden',
      out: 'Bestellt bei {laboratory}, gebraucht {needed}:',
      all: 'Alle Aufträge',
    },
    choices: {
      accept: {
        label: 'Annehmen wie gebraucht',
        then: 'Die Praxis liest, dass die Arbeit {needed} zurück ist.',
      },
      'accept-other': {
        label: 'Für einen anderen Tag annehmen',
        then: 'Die Praxis liest den Tag. Ist er später als gebraucht, erfährt sie es und plant neu.',
      },
      promise: { label: 'Anderer Tag', then: 'Die Praxis liest den neuen Tag statt des bisher zugesagten.' },
      finish: { label: 'Fertig', then: 'Die Praxis liest, dass die Arbeit fertig ist.' },
      decline: { label: 'Ablehnen', then: 'Die Arbeit geht mit Ihrem Grund an die Praxis zurück.' },
      withdraw: {
        label: 'Zurückziehen',
        then: 'Das Labor liest, dass der Auftrag zurückgenommen ist; die Arbeit wartet hier darauf, neu geplant zu werden.',
      },
    },
    day: 'Zurück in der Praxis am, bis {time}',
    dayMissing: 'Wählen Sie einen Tag, der noch kommt.',
  },
};
