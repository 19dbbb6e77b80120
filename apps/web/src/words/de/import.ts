import type { messages as english } from '../en/import.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  import: {
    title: 'Dateien einlesen',
    link: 'Einlesen',
    sentence:
      'Eine Datei wird zuerst probiert: Sie sehen, was geschähe, und nichts wird geschrieben, bevor Sie es sagen.',
    patients: 'Patienten aus einer Tabelle',
    patientsHint:
      'CSV mit Komma, Semikolon oder Tabulator; die erste Zeile nennt die Spalten: Vorname, Familienname, Geburtsdatum und mehr. Ein Kennzeichen entscheidet, wer wer ist; ohne eines tun es Name und Geburtsdatum.',
    calendar: 'Belegte Zeiten aus einem Kalender',
    calendarHint:
      'Eine iCalendar-Datei (.ics) eines Stuhls, einer Person oder eines Instrumentensatzes. Gebuchte Termine behalten ihren Platz.',
    file: 'Datei: {about}',
    needFile: 'Wählen Sie eine Datei mit höchstens 5 MB.',
    needResource: 'Wählen Sie, wessen Kalender es ist.',
    needSource:
      'Geben Sie einen Namen mit höchstens 500 Zeichen ein; eine spätere Datei unter demselben Namen ersetzt diese.',
    zone: 'Zeitzone von Zeilen, die keine nennen',
    dateOrder: 'Ein Datum wie 3/4/1951 ist',
    dateOrders: { ymd: 'Jahr, Monat, Tag', dmy: 'Tag, Monat, Jahr', mdy: 'Monat, Tag, Jahr' },
    encoding: 'Gespeichert als',
    encodings: { 'utf-8': 'UTF-8 oder UTF-16', 'windows-1252': 'Windows-1252 (ältere Tabellen)' },
    isUpdating: 'Schon angelegte Patienten ändern, soweit die Datei davon spricht',
    isStrict: 'Nichts schreiben, wenn eine Zeile abgelehnt wird',
    resource: 'Wessen Kalender',
    choose: 'Wählen',
    source: 'Name dieses Kalenders',
    try: 'Probieren',
    take: 'Einlesen',
    tried: 'Nur probiert, nichts wurde geschrieben.',
    refused: 'Zeilen wurden abgelehnt, darum wurde nichts geschrieben.',
    done: 'Geschrieben.',
    patientCounts:
      '{rows, plural, one {# Zeile} other {# Zeilen}}: {added} neu, {updated} geändert, {unchanged} schon da, {rejected} abgelehnt.',
    ignored: 'Spalten, aus denen nichts gemacht wurde: {columns}.',
    rejectedTitle: 'Abgelehnte Zeilen',
    rejectedColumns: { line: 'Zeile', reason: 'Warum, und was angenommen würde' },
    more: '{n} weitere stehen in der Datei der abgelehnten Zeilen.',
    download: 'Abgelehnte Zeilen mit ihren Gründen speichern',
    rejectsName: 'abgelehnte-zeilen.csv',
    calendarCounts:
      '{busy, plural, one {# belegte Zeit} other {# belegte Zeiten}}, davon {unchanged} schon bekannt; weggefallen: {gone}. {conflicts, plural, one {# fällt} other {# fallen}} auf gebuchte oder vorgemerkte Zeit.',
    toBeRepaired:
      '{n, plural, one {# neue fällt} other {# neue fallen}} auf kommende Termine: Sobald geschrieben ist, wird nach Lösungen gesucht.',
    beingRepaired:
      '{n, plural, one {# neue fällt} other {# neue fallen}} auf kommende Termine: Nach Lösungen wird gesucht.',
    seeRepairs: 'Zeigen, was ausfällt',
    bookedTitle: 'Gebuchte und vorgemerkte Zeiten, auf die es fällt',
    bookedColumns: { from: 'Von', until: 'Bis' },
    problemsTitle: 'Ausgelassen, weil nicht lesbar',
    problemColumns: { line: 'Zeile', component: 'Eintrag', problem: 'Warum' },
  },
};
