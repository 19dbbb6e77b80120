import type { Indication, VerticalWorkUp } from '@archwright/measures';

export const messages = {
  vertical: {
    title: 'Vertical dimension: all methods side by side',
    summary: 'No method decides alone. Values are those above, saved or not.',
    columns: {
      method: 'Method',
      value: 'Value',
      says: 'Says',
      weakness: 'Known weakness',
      source: 'Source',
    },
    says: { lower: 'lower it', raise: 'raise it', keep: 'keep it', unclear: 'nothing' } satisfies Record<
      Indication,
      string
    >,
    bases: {
      stable: 'The bases are stable: contact in speech counts.',
      unstable: 'The bases are not stable: a loose base clicks as well. Correct the base first.',
      'not-stated': 'Record the stability of the bases first: a loose base clicks as well.',
    } satisfies Record<VerticalWorkUp['bases'], string>,
    notRecorded: 'not recorded',
    value: '{value, number} {unit, select, percent {%} other {{unit}}}',
    source: '{text} ({standing})',
    correction: '{direction, select, lower {Lower} other {Raise}} by {least, number} to {most, number} mm: {methods}.',
    against: 'Against it: {methods}.',
    step: '{turns, number} turn {direction, select, clockwise {clockwise} other {counter clockwise}}: up to {mm, number} mm at the skin in all. {next}',
    steps: 'With the bearing screw',
    overstated: 'The needle is nearer to the hinge than the chin: what is wanted may be reached before the last turn.',
    repeat: 'To be repeated after every change',
    prompt: 'To be read aloud, quickly',
    language: 'Language',
    screw: 'Bearing screw of {label}',
    screwMissing: 'State pitch and direction from the maker’s leaflet, and turns are worked out.',
    screwKnown:
      '{pitch, number} mm in one turn, raised {direction, select, clockwise {clockwise} other {counter clockwise}}.',
    screwChange: 'Correct it',
    pitch: 'Rise of one turn, mm',
    pitchWanted: 'Enter a number from 0.1 to 3 mm.',
    raisesBy: 'Raised by turning, seen from its head',
    directions: { clockwise: 'clockwise', 'counter-clockwise': 'counter-clockwise' },
    screwSave: 'Keep it with the kit',
  },
};
