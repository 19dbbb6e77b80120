import type { messages as english } from '../en/figures.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  figures: {
    title: 'Wie die Praxis läuft',
    link: 'Kennzahlen',
    sentence:
      'Seit {since} {outside, plural, =0 {fällt nichts auf} one {fällt # Punkt auf} other {fallen # Punkte auf}}.',
    tooLittle: 'Für ein Urteil gibt es noch zu wenig.',
    loading: 'die Kennzahlen',
    titles: {
      'promise-kept': 'Eingegliedert bis zum zuerst zugesagten Tag',
      remake: 'Vor der Eingliederung etwas neu angefertigt',
      'missed-visit': 'Versäumte Termine',
      'lead-time': 'Tage vom Eröffnen des Falls bis zur Eingliederung',
      'visits-per-case': 'Termine bis zur Eingliederung',
    },
    per: {
      'promise-kept': 'Eingegliederte Fälle',
      remake: 'Eingegliederte Fälle',
      'missed-visit': 'Fällige Termine',
    },
    noneTitle: 'Noch nichts zu zählen',
    none: 'Mit dem ersten eingegliederten Fall und dem ersten vergangenen Termin erscheinen: {titles}.',
    shareSentence: '{events} von {size} in {months, plural, one {# Monat} other {# Monaten}}: {share}.',
    valueSentence: {
      days: '{average, number, ::.0 group-off} Tage im Durchschnitt {cases, plural, one {von # Fall} other {von # Fällen}}.',
      visits:
        '{average, number, ::.0 group-off} Termine im Durchschnitt {cases, plural, one {von # Fall} other {von # Fällen}}.',
    },
    values: {
      days: '{n, plural, one {# Tag} other {# Tage}}',
      visits: '{n, plural, one {# Termin} other {# Termine}}',
    },
    percent: '{n} %',
    span: '{lower} bis {upper}',
    pictureOf: '{title}. {sentence}',
    standing: {
      'too-few-months': 'Grenzen werden ab {needed} Monaten gezeichnet.',
      'too-few-cases': 'Grenzen werden ab {needed} Fällen gezeichnet.',
      'no-spread': 'Alle Punkte sind gleich, darum gibt es keine Grenzen.',
      charted:
        '{outside, plural, =0 {Kein Punkt liegt außerhalb dessen, was der Zufall erklärt.} one {# Punkt liegt außerhalb dessen, was der Zufall erklärt: Suchen Sie die Ursache.} other {# Punkte liegen außerhalb dessen, was der Zufall erklärt: Suchen Sie die Ursache.}}',
    },
    outside: 'außerhalb',
    inside: 'innerhalb',
    table: 'Dasselbe als Tabelle',
    shareColumns: {
      month: 'Monat',
      events: 'Gezählt',
      size: 'Von',
      share: 'Anteil',
      limits: 'Grenzen',
      verdict: 'Urteil',
    },
    valueColumns: { case: 'Fall', on: 'Eingegliedert am', value: 'Wert', verdict: 'Urteil' },
    use: {
      title: 'Nutzung von Stühlen, Behandlung und Labor',
      sentence: 'Gebuchte von offenen Stunden, {from} bis {to}.',
      columns: { name: 'Name', place: 'Wo', booked: 'Gebucht', open: 'Offen', share: 'Genutzt' },
      kinds: { chair: 'Stühle', clinician: 'Wer behandelt', 'work-centre': 'Arbeitsbereiche' },
      hours: '{hours, number, ::.# group-off} h',
      closed: 'nicht offen',
    },
  },
};
