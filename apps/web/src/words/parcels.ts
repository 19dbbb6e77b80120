import type { DeclareDisinfection, ObjectView, ParcelView } from '@archwright/contracts';
import { count } from './plural.js';

type Finding = NonNullable<ParcelView['objects'][number]['found']>;

/** Words of parcels and of the things that travel in them. */
export const parcelWords = {
  title: 'Parcels and things kept',
  loading: 'the parcels',
  sentence: (toReceive: number, toCheck: number) =>
    toReceive + toCheck === 0
      ? 'No parcel waits for you.'
      : `${count(toReceive, 'parcel', 'parcels')} on the way here, ${String(toCheck)} to be checked object by object.`,
  parcels: 'Parcels',
  noParcels: 'No parcel is under way. Pack what has been declared disinfected, and it appears here.',
  ends: {
    'to-lab': (clinic: string, lab: string) => `${clinic} to ${lab}`,
    'to-clinic': (clinic: string, lab: string) => `${lab} to ${clinic}`,
  },
  state: {
    packed: 'packed',
    'handed-over': 'on its way',
    received: 'to be checked',
    reconciled: 'checked',
  } satisfies Record<ParcelView['state'], string>,
  declared: (what: string) => `declared: ${what}`,
  takeOut: 'Take out',
  takeOutOf: (code: string) => `Take out ${code}`,
  handOver: 'Hand over',
  carrier: 'Who takes it',
  carrierHint: 'A name, or the run',
  carrierMissing: 'Say who takes it, in up to 80 characters.',
  receive: 'It is here',
  check: 'Check what is in it',
  finding: (name: string) => `Found: ${name}`,
  findings: {
    present: 'there',
    missing: 'missing',
    damaged: 'damaged',
    undeclared: 'without its declaration',
    unexpected: 'not announced',
  } satisfies Record<Finding, string>,
  findingMissing: 'Say how it was found.',
  place: (name: string) => `Shelf or tray: ${name}`,
  note: (name: string) => `Note: ${name}`,
  placeShort: 'Shelf or tray',
  noteShort: 'Note',
  amiss: 'Whatever is not simply there is quarantined, and the sender is told.',
  addUnexpected: 'Something that the list does not name',
  reconcile: 'The parcel is checked',
};

/** Words of packing: two identifiers for everything. */
export const packWords = {
  title: 'Pack a parcel',
  hint: 'Read both off the thing in your hand. Only what was declared disinfected since it came here may leave.',
  clinic: 'Clinic',
  laboratory: 'Laboratory',
  caseNumber: 'Case number',
  code: 'Code of the object',
  twoMissing: 'Enter both, as they stand on the label.',
  add: 'Add to the parcel',
  remove: (code: string) => `Leave out ${code}`,
  removeShort: 'Leave out',
  empty: 'Add at least one object.',
  go: 'Pack it',
  packed: 'Packed.',
};

/** Words of the things themselves. */
export const objectWords = {
  title: 'Things kept here',
  none: 'Nothing is kept here. Register what has to be followed from hand to hand, such as an impression.',
  kind: {
    impression: 'impression',
    cast: 'cast',
    base: 'base',
    rim: 'rim',
    'old-denture': 'old denture',
    'tracing-plate': 'tracing plate',
    'jaw-relation-record': 'jaw relation record',
    'trial-denture': 'trial denture',
    denture: 'denture',
    'scan-file': 'scan file',
    other: 'something else',
  } satisfies Record<ObjectView['kind'], string>,
  state: {
    expected: 'expected',
    'in-use': 'in use',
    packed: 'packed',
    'in-transit': 'on its way',
    quarantined: 'quarantined',
    'given-to-patient': 'with the patient',
    discarded: 'discarded',
    lost: 'lost',
  } satisfies Record<ObjectView['state'], string>,
  declared: (agent: string, when: string, by: string) => `Declared disinfected: ${agent}, ${when}, ${by}`,
  open: (code: string) => `What to do with ${code}`,
  deed: {
    quarantine: { label: 'Quarantine', then: 'Nobody works with it until somebody releases it, with a reason.' },
    release: { label: 'Release', then: 'It may be used again.' },
    'give-to-patient': { label: 'Give to the patient', then: 'It leaves with the patient.', hasReason: false as const },
    'book-in': { label: 'It has come', then: 'It is here, by other ways than a parcel.', hasReason: false as const },
    'declare-lost': { label: 'Lost', then: 'It is looked for no longer; found again, it is quarantined first.' },
    discard: { label: 'Discard', then: 'This is final.' },
  },
  forward: (clinic: string) => ({
    label: `Forward to ${clinic}`,
    then: `It goes to ${clinic}, declared disinfected, and is expected there. For cases that are treated there.`,
    hasReason: false as const,
  }),
};

/** Words of declaring disinfection. */
export const disinfectionWords = {
  declare: 'Declare it disinfected',
  agent: 'Disinfected with',
  method: 'How',
  methods: {
    immersion: 'immersion',
    spray: 'spray',
    wipe: 'wipe',
    heat: 'heat',
    other: 'otherwise',
  } satisfies Record<DeclareDisinfection['method'], string>,
  day: 'On',
  time: 'At',
  need: { agent: 'Name what it was disinfected with.', at: 'Enter a day and a time such as 09:20.' },
};

/** Words of keeping something from now on. */
export const registerWords = {
  title: 'Keep something from now on',
  kind: 'What it is',
  holder: 'Kept at',
  arch: 'Arch',
  arches: { '': 'both, or neither', upper: 'upper', lower: 'lower' },
  place: 'Shelf or tray',
  go: 'Register it',
  unknownCase: 'No case of yours has this number. Accepted: a number such as 27-0001, as it stands on the label.',
  done: (code: string) => `Write this code on it: ${code}`,
};
