import type { messages as english } from '../en/teeth.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  teeth: {
    title: 'Zahnauswahl',
    summary:
      'Die Beziehungen zwischen Gesichts- und Zahnbreiten widersprechen einander: ein Bereich zum Wählen, nie eine einzelne Zahl.',
    picture: 'Bereiche, die die Gesichtsbreiten nahelegen, mit den gemessenen Zähnen',
    empty:
      'Messen Sie eine Gesichtsbreite (weiter oben, „Breiten von Gesicht und Zähnen“); dann erscheinen die veröffentlichten Beziehungen.',
    columns: {
      relation: 'Beziehung',
      teeth: 'Zähne',
      range: 'Bereich',
      from: 'Ausgehend von',
      against: 'Dagegen',
      source: 'Quelle',
    },
    noNumbers: 'keine Zahlen veröffentlicht',
    range: '{low} bis {high} mm',
    from: '{name} {mm} mm',
    source: '{text} ({standing})',
    scaleEnd: '{mm} mm',
    targets: {
      'six-anterior-width': 'Sechs obere Frontzähne',
      'central-incisor-width': 'Oberer mittlerer Schneidezahn',
      'intercanine-distance': 'Eckzahnspitze zu Eckzahnspitze',
    },
    objects: {
      'old-denture': 'alte Prothese',
      photograph: 'früheres Foto',
      cast: 'Modell',
      'natural-teeth': 'eigene Zähne',
      rim: 'Wachswall',
      'set-up': 'Aufstellung',
    },
    measured: 'Gemessene Zähne',
    measuredName: '{target}, {object}: {mm} mm',
    width: 'Breite, mm',
    target: 'Welche Zähne',
    object: 'Woran',
    add: 'Gemessene Breite hinzufügen',
    remove: 'Breite {n} entfernen',
    notANumber: 'Geben Sie eine Zahl wie 8,5 ein.',
    wish: 'Wunsch des Patienten, in Ihren Worten',
    wishHint: 'Das Labor liest es: keine Namen.',
    arrangement: 'Aufstellung',
    shade: 'Zahnfarbe',
    mould: 'Zahnform',
    decidedBy: 'Wer entschieden hat',
    deciders: {
      nobody: 'noch niemand',
      patient: 'Patient',
      'companion-with-permission': 'Begleitung, mit Erlaubnis des Patienten',
      'legal-representative': 'gesetzliche Vertretung',
    },
    save: 'Diese Auswahl festhalten',
    kept: 'Festgehalten {when} von {by}.',
  },
};
