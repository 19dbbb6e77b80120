import type { messages as english } from '../en/lots.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  lot: {
    title: 'Wer trägt diese Charge?',
    start:
      'Geben Sie die Nummer einer Charge ein, wie sie auf dem Gebinde steht. Jeder Fall, in den sie ging, wird aufgeführt, mit der Person, die anzurufen ist.',
    found:
      '{n, plural, =0 {Bei keinem Fall ist die Charge „{lot}“ vermerkt.} one {Die Charge „{lot}“ ging in # Fall.} other {Die Charge „{lot}“ ging in # Fälle.}}',
    of: '{material}, {arches}',
    recorded: '{when}, {by}',
    first: 'Nur die ersten {n} Einträge sind gezählt und gezeigt.',
    link: 'Charge eines Materials suchen',
    lot: 'Charge',
    material: 'Material, wenn mehrere Hersteller die Nummer verwenden',
    find: 'Suchen',
    need: 'Geben Sie eine Charge mit höchstens 60 Zeichen ein.',
    none: 'Unter dieser Nummer ist nichts vermerkt. Vergleichen Sie sie mit dem Gebinde; die Schreibweise zählt, Groß- und Kleinschreibung nicht.',
    columns: {
      who: 'Patient',
      phone: 'Telefon',
      case: 'Fall',
      what: 'Material',
      expires: 'Verwendbar bis',
      recorded: 'Vermerkt',
    },
    noExpiry: 'nicht aufgedruckt',
    used: {
      title: 'Verwendetes Material',
      open: 'Charge vermerken',
      why: 'Damit diese Prothese gefunden wird, wenn der Hersteller die Charge zurückruft.',
      material: 'Material, wie auf dem Gebinde',
      lot: 'Chargennummer',
      expires: 'Verwendbar bis (leer: nicht aufgedruckt)',
      materialMissing: 'Geben Sie das Material mit höchstens 120 Zeichen ein.',
      save: 'Vermerken',
      saved: 'Vermerkt: {material}, Charge {lot}.',
      none: 'Zu diesem Auftrag ist noch keine Charge vermerkt.',
      columns: { what: 'Material', lot: 'Charge', expires: 'Verwendbar bis', recorded: 'Vermerkt' },
    },
  },
};
