import type { Indication, VerticalWorkUp } from '@archwright/measures';
import { listed } from './plural.js';

/** Words of the work-up of the vertical dimension. */
export const verticalWords = {
  title: 'Vertical dimension: all methods side by side',
  summary: 'No method decides alone. Values are those above, saved or not.',
  columns: ['Method', 'Value', 'Says', 'Known weakness', 'Source'],
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
  source: (text: string, standing: string) => `${text} (${standing})`,
  correction: (direction: 'lower' | 'raise', least: number, most: number, by: readonly string[]) =>
    `${direction === 'lower' ? 'Lower' : 'Raise'} by ${String(least)} to ${String(most)} mm: ${listed(by)}.`,
  against: (names: readonly string[]) => `Against it: ${listed(names)}.`,
  step: (direction: string, turns: number, mm: number, then: string) =>
    `${String(turns)} turn ${direction}: up to ${String(mm)} mm at the skin in all. ${then}`,
  steps: 'With the bearing screw',
  overstated: 'The needle is nearer to the hinge than the chin: what is wanted may be reached before the last turn.',
  repeat: 'To be repeated after every change',
  prompt: 'To be read aloud, quickly',
  language: 'Language',
  screw: (label: string) => `Bearing screw of ${label}`,
  screwMissing: 'State pitch and direction from the maker’s leaflet, and turns are worked out.',
  screwKnown: (pitch: number, direction: string) => `${String(pitch)} mm in one turn, raised ${direction}.`,
  screwChange: 'Correct it',
  pitch: 'Rise of one turn, mm',
  pitchWanted: 'Enter a number from 0.1 to 3 mm.',
  raisesBy: 'Raised by turning, seen from its head',
  directions: [
    { value: 'clockwise', label: 'clockwise' },
    { value: 'counter-clockwise', label: 'counter-clockwise' },
  ],
  screwSave: 'Keep it with the kit',
};
