import type { CautionView, RecordCaution } from '@archwright/contracts';

type Kind = CautionView['kind'];
type Material = Extract<RecordCaution, { kind: 'material-allergy' }>['material'];

export const messages = {
  caution: {
    title: 'Cautions · {name}',
    link: 'Cautions of the patient',
    loading: 'the cautions',
    sentence:
      '{n, plural, =0 {No caution is in force. What is recorded here stands at the top of every visit.} one {# caution is in force, shown at every visit. The laboratory learns the materials to avoid and nothing else.} other {# cautions are in force, shown at every visit. The laboratory learns the materials to avoid and nothing else.}}',
    notForYou: 'Cautions of a patient are recorded and seen by clinicians.',
    back: 'To the case',
    inForce: 'In force',
    ended: 'Ended',
    none: 'None. Record an allergy or another hazard beside this list.',
    recorded: 'Recorded by {by}, {when}',
    endedOn: 'Ended {when}: {reason}',
    end: {
      label: 'It no longer holds',
      then: 'It is not shown at visits any more. It stays on record with your reason; nothing is deleted.',
    },
    record: 'Record a caution',
    kind: 'What it is',
    kinds: {
      'material-allergy': 'Allergy to a material',
      swallowing: 'Trouble swallowing, gagging',
      bleeding: 'Bleeds longer',
      'jaw-bone': 'Jaw bone endangered by medicines or radiation',
      other: 'Something else',
    } satisfies Record<Kind, string>,
    material: 'Material',
    materials: {
      methacrylate: 'methacrylate',
      nickel: 'nickel',
      latex: 'latex',
      eugenol: 'eugenol',
      polyether: 'polyether',
      flavour: 'flavours',
      another: 'another, named below',
    } satisfies Record<Material, string>,
    note: 'In words',
    noteHint: 'What happened, since when, what helps. It is shown to clinicians only.',
    choose: 'Choose',
    save: 'Record it',
    need: {
      kind: 'Choose what it is.',
      material: 'Choose the material.',
      note: 'Say in up to 500 characters what to mind.',
    },
  },
};
