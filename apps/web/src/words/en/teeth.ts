import type { ChooseTeeth } from '@archwright/contracts';
import type { ToothTarget } from '@archwright/measures';

type Measured = ChooseTeeth['measured'][number];

export const messages = {
  teeth: {
    title: 'Choice of teeth',
    summary: 'Relations of face and tooth widths contradict each other: a range to choose from, never one number.',
    picture: 'Ranges that the widths of the face suggest, with the teeth that were measured',
    empty: 'Measure a width of the face (further up, “Widths of face and teeth”), and the published relations appear.',
    columns: {
      relation: 'Relation',
      teeth: 'Teeth',
      range: 'Range',
      from: 'Starts from',
      against: 'Against it',
      source: 'Source',
    },
    noNumbers: 'no numbers published',
    range: '{low} to {high} mm',
    from: '{name} {mm} mm',
    source: '{text} ({standing})',
    scaleEnd: '{mm} mm',
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
    measuredName: '{target}, {object}: {mm} mm',
    width: 'Width, mm',
    target: 'Which teeth',
    object: 'On what',
    add: 'Add a measured width',
    remove: 'Remove width {n}',
    notANumber: 'Enter a number such as 8.5.',
    wish: 'Wish of the patient, in your words',
    wishHint: 'The laboratory reads it: no names.',
    arrangement: 'Arrangement',
    shade: 'Shade',
    mould: 'Mould',
    decidedBy: 'Who decided',
    deciders: {
      nobody: 'nobody yet',
      patient: 'patient',
      'companion-with-permission': 'companion, with the patient’s permission',
      'legal-representative': 'legal representative',
    } satisfies Record<NonNullable<ChooseTeeth['decidedBy']> | 'nobody', string>,
    save: 'Keep this choice',
    kept: 'Kept {when} by {by}.',
  },
};
