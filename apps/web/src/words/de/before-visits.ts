import type { messages as english } from '../en/before-visits.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  beforeVisits: {
    title: 'Vor den Terminen',
    loading: 'was zu klären ist',
    nothing: 'Vor den Terminen wartet nichts auf eine Entscheidung.',
    arrivals: '{n, plural, one {# Termin, dessen Arbeit nicht da ist} other {# Termine, deren Arbeit nicht da ist}}',
    recalls: '{n, plural, one {# Kontrolle zu buchen} other {# Kontrollen zu buchen}}',
    transfers:
      '{n, plural, one {# Fall auf dem Weg an einen anderen Standort} other {# Fälle auf dem Weg an einen anderen Standort}}',
    waiting: '{parts}.',
    more: 'Gezeigt sind die ersten {n}; die anderen folgen, wenn diese geklärt sind.',
  },
  arrival: {
    title: 'Arbeit, die nicht da ist',
    none: 'Jeder Termin der nächsten Tage hat seine Arbeit, oder der Plan bringt sie noch. Was zurückfällt, erscheint hier Tage vor dem Termin.',
    visit: 'Termin {when}, {clinic}',
    missing: 'Nicht da: {things}.',
    choices: {
      wait: {
        label: 'Darauf warten',
        then: 'Der Termin bleibt, wie er ist; der Anruf beim Patienten verlässt die Liste.',
      },
      move: {
        label: 'Anrufen und verlegen',
        then: 'Der Anruf beim Patienten bleibt auf der Liste. Die nächste Seite verlegt den Termin; nichts wird verlegt, bevor Sie gesehen haben, was sich mit ihm verschiebt.',
      },
    },
  },
  recall: {
    title: 'Kontrollen zu buchen',
    none: 'In den nächsten vier Wochen wird keine Kontrolle nach einer Eingliederung fällig. Eine Eingliederung macht sie fällig; sie erscheinen hier rechtzeitig zum Buchen.',
    due: 'fällig {when}',
    overdue: 'fällig seit {when}',
    about: '{title}, {number}',
    book: 'Zeit suchen',
    bookFor: 'Zeit suchen: {name}',
    choices: {
      'put-off': {
        label: 'Aufschieben',
        then: 'Die Kontrolle wird an dem Tag fällig, den Sie nennen, und kommt dann auf diese Liste zurück.',
        date: { label: 'Fällig am', missing: 'Wählen Sie einen Tag ab heute.' },
      },
      done: {
        label: 'Ohne Termin erledigt',
        then: 'Etwa am Telefon. Die nächste Kontrolle wird nach der Regel fällig.',
      },
      declined: {
        label: 'Abgelehnt',
        then: 'Der Patient möchte sie nicht. Die nächste Kontrolle wird nach der Regel fällig.',
      },
    },
  },
  transfer: {
    title: 'Fälle auf dem Weg',
    none: 'Kein Fall ist auf dem Weg an einen anderen Standort. Eine vorgeschlagene Übergabe wartet hier auf das Wort des Standorts, der übernimmt.',
    why: 'Warum: {reason}',
    work: '{n, plural, one {# Laborschritt läuft} other {# Laborschritte laufen}}; die Arbeit folgt dem Fall.',
    noWork: 'Keine Laborarbeit läuft.',
    objects: 'Geht mit: {codes}.',
    noObjects: 'Nichts ist aufbewahrt, was mitgehen würde.',
    elsewhere: 'Der Standort, der übernimmt, antwortet.',
    choices: {
      accept: { label: 'Übernehmen', then: 'Der Fall geht an diesem Standort weiter und wird neu geplant.' },
      decline: {
        label: 'Ablehnen',
        then: 'Der Fall geht weiter, wo er war, und dieser Standort sieht ihn nicht mehr.',
      },
      withdraw: {
        label: 'Vorschlag zurückziehen',
        then: 'Der Fall geht weiter, wo er ist; der andere Standort erfährt es.',
      },
    },
    outside: {
      accept: { label: 'Sie übernehmen', then: 'Die fremde Praxis hat zugestimmt; der Fall bleibt übergeben.' },
      decline: { label: 'Sie lehnen ab', then: 'Die fremde Praxis hat abgelehnt; der Fall geht weiter, wo er war.' },
    },
  },
};
