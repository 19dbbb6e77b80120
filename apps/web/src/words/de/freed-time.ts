import type { messages as english } from '../en/freed-time.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  freed: {
    title: 'Frei gewordene Zeit',
    sentence: 'Behandlungszeit, die frei geworden ist. Der Fall, dem sie am meisten bringt, steht zuoberst.',
    clinic: 'Standort',
    clinician: 'Behandlung',
    choose: 'Wählen',
    day: 'Tag',
    from: 'Von',
    to: 'Bis',
    ask: 'Wem bringt sie am meisten?',
    loading: 'wem sie etwas bringt; jeder Fall wird dafür neu geplant, was einige Sekunden dauern kann',
    need: {
      clinic: 'Wählen Sie den Standort.',
      clinician: 'Wählen Sie, wessen Zeit es ist.',
      day: 'Geben Sie den Tag ein.',
      from: 'Geben Sie eine Uhrzeit in Schritten von 5 Minuten ein, etwa 09:00.',
      to: 'Geben Sie eine spätere Uhrzeit in Schritten von 5 Minuten ein, etwa 09:45.',
    },
    start:
      'Wem die Zeit etwas bringt, steht dann hier, der größte Gewinn zuoberst. Wurde ein Termin verschoben oder abgesagt, zeigt sein Fall die Zeit, die er freiließ.',
    none: 'Niemandem bringt diese Zeit etwas: Kein künftiger Termin passt nach Länge, Behandlung und Laborarbeit hinein.',
    looked:
      '{looked, plural, one {# Fall wurde} other {# Fälle wurden}} angesehen{left, plural, =0 {.} one {; # mit näherem Termin blieb außen vor.} other {; # mit näherem Termin blieben außen vor.}}',
    move: 'jetzt {before}, dann {after}',
    placement: 'Eingliederung {before}, dann {after}',
    preview: 'Zeigen, was sich ändern würde',
    previewOf: 'Zeigen, was sich ändern würde: {patient}',
    hide: 'Diesen nicht',
    apply: 'Zugesagt: ändern',
    done: 'Geändert. Die Zeit nimmt Fall {number}.',
    calls: 'Anrufe, die anstehen',
    timeOf: '{day}, {from} bis {to}',
    freed: '{when} ist frei geworden.',
    see: 'Ansehen, wem sie am meisten bringt',
  },
};
