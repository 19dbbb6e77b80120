import type { messages as english } from '../en/cautions.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  caution: {
    title: 'Vorsicht · {name}',
    link: 'Vorsicht bei diesem Patienten',
    loading: 'die Hinweise',
    sentence:
      '{n, plural, =0 {Kein Hinweis gilt. Was hier festgehalten wird, steht bei jedem Termin zuoberst.} one {# Hinweis gilt und steht bei jedem Termin. Das Labor erfährt die zu meidenden Materialien und sonst nichts.} other {# Hinweise gelten und stehen bei jedem Termin. Das Labor erfährt die zu meidenden Materialien und sonst nichts.}}',
    notForYou: 'Hinweise zu Patienten werden von Behandelnden festgehalten und gesehen.',
    back: 'Zum Fall',
    inForce: 'Gültig',
    ended: 'Beendet',
    none: 'Keine. Halten Sie neben dieser Liste eine Allergie oder eine andere Gefahr fest.',
    recorded: 'Festgehalten von {by}, {when}',
    endedOn: 'Beendet {when}: {reason}',
    end: {
      label: 'Gilt nicht mehr',
      then: 'Der Hinweis erscheint nicht mehr bei Terminen. Er bleibt mit Ihrem Grund festgehalten; nichts wird gelöscht.',
    },
    record: 'Hinweis festhalten',
    kind: 'Worum es geht',
    kinds: {
      'material-allergy': 'Allergie gegen ein Material',
      swallowing: 'Schluckbeschwerden, Würgereiz',
      bleeding: 'Blutet länger',
      'jaw-bone': 'Kieferknochen gefährdet durch Medikamente oder Bestrahlung',
      other: 'Etwas anderes',
    },
    material: 'Material',
    materials: {
      methacrylate: 'Methacrylat',
      nickel: 'Nickel',
      latex: 'Latex',
      eugenol: 'Eugenol',
      polyether: 'Polyether',
      flavour: 'Aromastoffe',
      another: 'ein anderes, unten genannt',
    },
    note: 'In Worten',
    noteHint: 'Was geschah, seit wann, was hilft. Nur Behandelnde sehen es.',
    choose: 'Wählen',
    save: 'Festhalten',
    need: {
      kind: 'Wählen Sie, worum es geht.',
      material: 'Wählen Sie das Material.',
      note: 'Sagen Sie mit höchstens 500 Zeichen, was zu beachten ist.',
    },
  },
};
