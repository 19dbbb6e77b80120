/** Measurements of one patient that go together: their combination may be rare where each of them is ordinary. */
export interface MeasurementSet {
  readonly code: string;
  readonly name: string;
  readonly members: readonly string[];
}

/** Lengths of one face or one jaw, of no arch or side. Project default: what is measured with the same intention. */
export const MEASUREMENT_SETS: readonly MeasurementSet[] = [
  {
    code: 'face-widths',
    name: 'Widths of the face',
    members: ['interalar-width', 'bizygomatic-width', 'inner-canthal-width', 'interpupillary-distance'],
  },
  {
    code: 'facial-thirds',
    name: 'Thirds of the face',
    members: ['upper-facial-third', 'middle-facial-third', 'lower-facial-third'],
  },
  {
    code: 'excursions',
    name: 'Movements of the jaw',
    members: ['excursion-right', 'excursion-left', 'excursion-protrusive'],
  },
];
