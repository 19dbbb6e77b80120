import type { messages as english } from '../en/course.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  course: {
    title: '{number} · Der Verlauf bei {patient}',
    link: 'Verlauf des Falls',
    loading: 'der Verlauf des Falls',
    plan: 'Erster Plan und was geschah',
    columns: { what: 'Termin oder Arbeit', first: 'Zuerst geplant', then: 'Fand statt', later: 'Später um' },
    whenAndState: '{when} ({state})',
    notPlanned: 'nicht geplant',
    notAtFirst: 'nicht im ersten Plan',
    later: '{n, plural, one {# Tag} other {# Tage}}',
    earlier: '{n, plural, one {# Tag früher} other {# Tage früher}}',
    onTheDay: 'am selben Tag',
    measured: 'Messwerte über die Termine',
    measuredNote:
      'Zahlen sind der Median ihrer Ablesungen oder daraus berechnet. Werte zwischen anderen Marken oder auf anderem Weg stehen in einer eigenen Zeile: Sie werden nicht verglichen.',
    measurement: 'Messung',
    noneMeasured: 'Es wurde noch nichts gemessen.',
    column: '{day}: {title}',
    nameOf: '{name}, {place}',
    amount: '{value, number} {unit}',
    yes: 'ja',
    no: 'nein',
    tracings: 'Aufzeichnungen',
    noTracings: 'Es wurde nichts aufgezeichnet.',
    noPhotographs: 'Es wurde kein Foto aufbewahrt.',
    typed: 'Die Befunde wurden eingetippt; es gibt keine Zeichnung.',
  },
};
