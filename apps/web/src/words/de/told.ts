import type { messages as english } from '../en/told.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  told: {
    'case-paused':
      'Ruht{because, select, none {.} other {: {because}}}{again, select, none {} other { Wieder anzusehen am {again}.}}',
    'case-transferred': 'Abgegeben{because, select, none {.} other {: {because}}}',
    'case-abandoned': 'Aufgegeben{because, select, none {.} other {: {because}}}',
    'case-closed': 'Abgeschlossen. Nachsorgetermine bleiben fällig.',
    'case-ended-by-death': 'Der Patient ist verstorben. Alles wurde angehalten.',
    'case-to-decide': 'Zu entscheiden bei „{title}“: {reason}',
    'case-held': 'Zeiten sind reserviert bis {until}: Bestätigen Sie sie oder geben Sie sie zurück.',
    'case-under-way': 'Im Gange: {title}.',
    'case-missed': 'Versäumt: {title}, {when}. Es braucht eine neue Zeit.',
    'case-next':
      'Als Nächstes: {title}, {when}, {clinic}.{placement, select, none {} other { Eingliederung am {placement}.}}',
    'case-placed': 'Eingegliedert am {on}. Spätere Kontrollen und Nachsorge sind fällig, nicht gebucht.',
    'case-nothing-left': 'Nichts mehr zu buchen. Spätere Kontrollen und Nachsorge sind fällig, nicht gebucht.',
    'case-enquiry': 'Anfrage: Noch ist nichts gebucht. Fragen Sie nach Angeboten für „{title}“.',
    'case-not-booked': 'Nicht gebucht: „{title}“ und was folgt. Fragen Sie nach Angeboten.',
    'day-empty': 'Keine Termine an diesem Tag.',
    day: '{visits, plural, one {# Termin} other {# Termine}}{parts, select, none {} other {: {parts}}}.',
    'day-arrived': '{n} im Wartezimmer',
    'day-in-progress': '{n} im Gange',
    'day-completed': '{n} beendet',
    'day-missed': '{n} versäumt',
    'day-not-firm': '{n} noch nicht fest',
    'board-may-go-on': '{n} kann weitergehen',
    'board-check-first': '{n} erst zu prüfen',
    'board-decide': '{n} zu entscheiden',
    'board-not-ready': '{n} nicht bereit',
    load: '{late, plural, =0 {Nichts droht sich zu verspäten} other {Bei # droht Verspätung}}; {over, select, none {kein Arbeitsplatz ist über seine offene Zeit hinaus belegt} other {über die offene Zeit hinaus: {over}}}{more, plural, =0 {} other {, und # weitere}}.',
    'load-over': '{name} am {on}',
    'dispatch-empty': 'Keine Arbeit an diesem Tag.',
    'dispatch-finished': 'Alles ist fertig.',
    dispatch:
      '{steps, plural, one {# Arbeitsschritt} other {# Arbeitsschritte}} zu tun, davon {waiting} wartend, {late} verspätet.',
    'dispatch-order':
      'Am wenigsten Luft zuerst: die Zeit vom erwarteten Ende der Arbeit bis zu ihrem Abgang in die Praxis. Bei gleicher Luft gilt der geplante Beginn. Was auf eine Antwort wartet, kommt zuletzt vom Unfertigen: Seine Uhr steht.',
    'calls-none': 'Keine Anrufe zu machen.',
    calls: '{calls, plural, one {# Anruf} other {# Anrufe}} zu machen, {overdue} jetzt fällig.',
  },
};
