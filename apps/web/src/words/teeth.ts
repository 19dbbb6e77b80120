import type { ChooseTeeth } from '@archwright/contracts';
import type { ToothTarget } from '@archwright/measures';

type Measured = ChooseTeeth['measured'][number];

/** Words of the choice of teeth. */
export const teethWords = {
  title: 'Choice of teeth',
  summary: 'Relations of face and tooth widths contradict each other: a range to choose from, never one number.',
  picture: 'Ranges that the widths of the face suggest, with the teeth that were measured',
  empty: 'Measure a width of the face (further up, “Widths of face and teeth”), and the published relations appear.',
  columns: ['Relation', 'Teeth', 'Range', 'Starts from', 'Against it', 'Source'],
  noNumbers: 'no numbers published',
  range: (low: string, high: string) => `${low} to ${high} mm`,
  from: (name: string, mm: string) => `${name} ${mm} mm`,
  targets: {
    'six-anterior-width': 'Six upper front teeth',
    'central-incisor-width': 'Upper central incisor',
    'intercanine-distance': 'Canine tip to canine tip',
  } satisfies Record<ToothTarget, string>,
  objects: {
    'old-denture': 'old denture',
    photograph: 'earlier photograph',
    cast: 'cast',
    'natural-teeth': 'natural teeth',
    rim: 'rim',
    'set-up': 'set-up',
  } satisfies Record<Measured['object'], string>,
  measured: 'Measured teeth',
  measuredName: (target: string, object: string, mm: string) => `${target}, ${object}: ${mm} mm`,
  width: 'Width, mm',
  target: 'Which teeth',
  object: 'On what',
  add: 'Add a measured width',
  remove: (n: number) => `Remove width ${String(n)}`,
  notANumber: 'Enter a number such as 8.5.',
  wish: 'Wish of the patient, in your words',
  wishHint: 'The laboratory reads it: no names.',
  arrangement: 'Arrangement',
  shade: 'Shade',
  mould: 'Mould',
  decidedBy: 'Who decided',
  deciders: [
    { value: '', label: 'nobody yet' },
    { value: 'patient', label: 'patient' },
    { value: 'companion-with-permission', label: 'companion, with the patient’s permission' },
    { value: 'legal-representative', label: 'legal representative' },
  ],
  save: 'Keep this choice',
  kept: (when: string, by: string) => `Kept ${when} by ${by}.`,
};
