import type { messages as english } from '../en/vertical.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  vertical: {
    title: 'Vertikaldimension: alle Verfahren nebeneinander',
    summary: 'Kein Verfahren entscheidet allein. Es gelten die Werte oben, gesichert oder nicht.',
    columns: {
      method: 'Verfahren',
      value: 'Wert',
      says: 'Sagt',
      weakness: 'Bekannte Schwäche',
      source: 'Quelle',
    },
    says: { lower: 'Biss senken', raise: 'Biss heben', keep: 'so lassen', unclear: 'nichts' },
    bases: {
      stable: 'Die Basen sitzen stabil: Kontakte beim Sprechen zählen.',
      unstable: 'Die Basen sitzen nicht stabil: Auch eine lockere Basis klappert. Korrigieren Sie zuerst die Basis.',
      'not-stated': 'Halten Sie zuerst fest, ob die Basen stabil sitzen: Auch eine lockere Basis klappert.',
    },
    notRecorded: 'nicht erfasst',
    value: '{value, number} {unit, select, percent {%} other {{unit}}}',
    source: '{text} ({standing})',
    correction:
      'Um {least, number} bis {most, number} mm {direction, select, lower {senken} other {heben}}: {methods}.',
    against: 'Dagegen spricht: {methods}.',
    step: '{turns, number} Umdrehung {direction, select, clockwise {im Uhrzeigersinn} other {gegen den Uhrzeigersinn}}: insgesamt bis zu {mm, number} mm an der Haut. {next}',
    steps: 'Mit der Stützschraube',
    overstated:
      'Der Stützstift liegt näher am Gelenk als das Kinn: Das Gewünschte kann vor der letzten Drehung erreicht sein.',
    repeat: 'Nach jeder Änderung zu wiederholen',
    prompt: 'Schnell laut vorzulesen',
    language: 'Sprache',
    screw: 'Stützschraube von {label}',
    screwMissing:
      'Geben Sie Steigung und Drehrichtung nach der Anleitung des Herstellers an; dann werden die Drehungen berechnet.',
    screwKnown:
      '{pitch, number} mm je Umdrehung, gehoben {direction, select, clockwise {im Uhrzeigersinn} other {gegen den Uhrzeigersinn}}.',
    screwChange: 'Berichtigen',
    pitch: 'Hub einer Umdrehung, mm',
    pitchWanted: 'Geben Sie eine Zahl von 0,1 bis 3 mm ein.',
    raisesBy: 'Gehoben durch Drehen, vom Schraubenkopf her gesehen',
    directions: { clockwise: 'im Uhrzeigersinn', 'counter-clockwise': 'gegen den Uhrzeigersinn' },
    screwSave: 'Beim Registriersatz ablegen',
  },
};
