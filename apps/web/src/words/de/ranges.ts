import type { messages as english } from '../en/ranges.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  ranges: {
    title: 'Übliche Bereiche und Grenzen',
    link: 'Bereiche',
    sentence:
      '{own, plural, =0 {Alles wie ausgeliefert} one {# eigener Wert} other {# eigene Werte}}. Was Sie ändern, gilt ab der nächsten gesicherten Messung.',
    loading: 'die Bereiche',
    usual: 'Übliche Bereiche',
    limits: 'Grenzen der Prüfungen',
    columns: {
      name: 'Messung',
      shipped: 'Ausgeliefert',
      least: 'Ihr kleinster',
      most: 'Ihr größter',
      source: 'Quelle',
    },
    limitColumns: { name: 'Grenze', shipped: 'Ausgeliefert', own: 'Ihre', source: 'Quelle' },
    nameOf: '{name}, {group}',
    none: 'keiner bekannt',
    span: '{min, number} bis {max, number} {unit}',
    value: '{value, number} {unit}',
    source: '{source} ({standing})',
    standings: {
      published: 'veröffentlicht',
      'common practice': 'allgemeine Praxis',
      'project default': 'Vorgabe des Programms',
      memory: 'aus dem Gedächtnis',
    },
    fixed: 'nicht änderbar',
    least: 'Kleinster Wert: {name}',
    most: 'Größter Wert: {name}',
    limit: 'Ihre Grenze: {name}',
    needSpan:
      'Geben Sie beide ein oder keinen: den kleinsten unter dem größten, von {min, number} bis {max, number} {unit}.',
    needLimit: 'Geben Sie eine Zahl von {min, number} bis {max, number} {unit} ein oder nichts.',
    reason: 'Warum es geändert wird',
    needReason: 'Sagen Sie in 3 bis 500 Zeichen, warum; es bleibt in den Akten.',
    save: 'Bereiche sichern',
    saved: 'Gesichert.',
    history: 'Was früher geändert wurde',
    historyColumns: { at: 'Wann', by: 'Wer', why: 'Warum' },
  },
};
