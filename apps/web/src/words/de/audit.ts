import type { messages as english } from '../en/audit.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  audit: {
    title: 'Wer hat was getan',
    link: 'Protokoll',
    sentence:
      '{isAll, select, yes {{shown, plural, one {# Eintrag} other {# Einträge, die neuesten zuerst}}.} other {{shown, plural, one {Der neueste Eintrag} other {Die neuesten # Einträge}}; es gibt weitere.}}',
    loading: 'das Protokoll',
    none: 'Kein Eintrag passt. Suchen Sie mit weniger Wörtern oder über mehr Tage.',
    fields: {
      by: 'Wer',
      deed: 'Vorgang oder sein Anfang',
      case: 'Fallnummer',
      from: 'Von',
      until: 'Bis',
    },
    anybody: 'Alle',
    service: 'der Dienst',
    find: 'Suchen',
    more: 'Frühere Einträge zeigen',
    need: {
      deed: 'Geben Sie kleingeschriebene Wörter mit Bindestrichen ein, etwa visit-moved.',
      case: 'Geben Sie eine Fallnummer wie 27-0012 ein.',
      until: 'Wählen Sie den ersten Tag oder einen späteren.',
    },
    columns: { at: 'Wann', by: 'Wer', deed: 'Vorgang', about: 'Worum es geht', details: 'Einzelheiten' },
    about: '{name}, {kind}',
  },
};
