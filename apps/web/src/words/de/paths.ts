import type { messages as english } from '../en/paths.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  paths: {
    title: 'Behandlungswege',
    link: 'Behandlungswege',
    sentence:
      '{paths, plural, one {# Behandlungsweg} other {# Behandlungswege}} in {versions, plural, one {# Fassung} other {# Fassungen}}. Offene Fälle behalten die Fassung, mit der sie begonnen haben.',
    loading: 'die Behandlungswege',
    back: 'Alle Behandlungswege',
    columns: {
      title: 'Behandlungsweg',
      version: 'Fassung',
      arches: 'Kiefer',
      visits: 'Termine',
      published: 'Veröffentlicht',
      cases: 'Offene Fälle',
    },
    shipped: '{on}, mit dem Programm',
    by: '{on}, von {name}',
    withdrawn: 'zurückgezogen',
    latest: 'neueste',
    head: '{code}, Fassung {version}',
    headWith: '{code}, Fassung {version}. {summary}',
    edit: 'Ändern oder kopieren',
    withdraw: 'Neuen Fällen nicht mehr anbieten',
    offerAgain: 'Neuen Fällen wieder anbieten',
    picture: 'Der Behandlungsweg als Bild',
    pictureOf:
      '{title}: {visits, plural, one {# Termin} other {# Termine}} mit {phases, plural, one {# Abschnitt} other {# Abschnitten}} Laborarbeit dazwischen. Die Tabelle darunter sagt dasselbe.',
    order: 'Der Behandlungsweg als Tabelle',
    orderColumns: {
      part: 'Teil',
      what: 'Was',
      minutes: 'Minuten',
      after: 'Nach',
      waits: 'Wartezeiten',
      guards: 'Braucht zuvor',
    },
    kinds: { visit: 'Termin', step: 'Labor' },
    visitOf: 'Termin: {title}',
    stepOf: 'Labor: {title}',
    minutes: '{min} bis {max}, gewöhnlich {typical}',
    turnaround: 'zurück nach {usualMin} bis {usualMax} Labortagen, eilig nach {rush} ({before})',
    waitOf: {
      least: '{from}: mindestens {least}',
      most: '{from}: höchstens {most}',
      both: '{from}: mindestens {least}, höchstens {most}',
    },
    spans: {
      'calendar-days': '{n, plural, one {# Tag} other {# Tage}}',
      'lab-working-days': '{n, plural, one {# Labortag} other {# Labortage}}',
    },
    compare: 'Vergleichen mit',
    noCompare: 'keiner anderen Fassung',
    differences: '{n, plural, =0 {Kein Unterschied.} one {# Unterschied} other {# Unterschiede}}',
    differenceColumns: { at: 'Wo', kind: 'Was', before: 'Vorher', after: 'Nachher' },
    differenceKinds: {
      added: 'hinzugefügt',
      removed: 'entfernt',
      changed: 'geändert',
      moved: 'anders gereiht',
    },
    editTitle: 'Ändern: {title}',
    editSentence:
      'Für offene Fälle ändert sich nichts. Ihre Eingaben bleiben hier, bis sie veröffentlicht oder aufgegeben werden.',
    faults:
      '{n, plural, =0 {Der Behandlungsweg ist stimmig und kann veröffentlicht werden.} one {# Fehler ist zu beheben, bevor er veröffentlicht werden kann:} other {# Fehler sind zu beheben, bevor er veröffentlicht werden kann:}}',
    meansTitle: 'Was der Praxis fehlt',
    means: {
      skill: 'Niemand hat die Fähigkeit „{code}“.',
      kit: 'Kein Standort hat den Instrumentensatz „{code}“.',
      centre: 'Kein Labor hat den Arbeitsbereich „{code}“.',
    },
    publish: 'Als Fassung {version} veröffentlichen',
    giveUp: 'Meine Eingaben aufgeben',
  },
};
