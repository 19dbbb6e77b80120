import type { Arch } from '@archwright/contracts';
import { aftercareWords } from '../words/aftercare.js';

const { region: names } = aftercareWords;
type Named = keyof typeof names;

export interface RegionPlace {
  region: string;
  /** Middle of the button, px in the drawing of its arch. */
  x: number;
  y: number;
  /** What stands on the button; side and arch are said by where it is. */
  words: string;
}

export const DRAWING = { width: 440, height: 344 } as const;
/** Fingers in gloves: 44 px at least (WCAG 2.2, success criterion 2.5.5). */
export const BUTTON = { width: 70, height: 44 } as const;

/** The patient's right is on the left of the picture, as one looks at the patient; the left is its mirror image. */
const both = (region: Named, x: number, y: number): RegionPlace[] => [
  { region: `${region}-right`, x, y, words: names[region] },
  { region: `${region}-left`, x: DRAWING.width - x, y, words: names[region] },
];
const middle = (region: Named, y: number): RegionPlace => ({ region, x: DRAWING.width / 2, y, words: names[region] });

/** Lips above in the upper arch, below in the lower: the two stand as they close. */
export const REGION_PLACES: Readonly<Record<Arch, readonly RegionPlace[]>> = {
  upper: [
    middle('labial-sulcus', 24),
    middle('labial-frenum', 74),
    middle('ridge-anterior', 124),
    ...both('buccal-sulcus', 36, 150),
    ...both('ridge', 112, 150),
    ...both('tuberosity', 92, 226),
    middle('palate', 194),
    middle('post-dam', 264),
  ],
  lower: [
    ...both('retromolar', 92, 26),
    ...both('mylohyoid', 172, 42),
    ...both('buccal-sulcus', 36, 104),
    ...both('ridge', 110, 104),
    ...both('lingual', 184, 104),
    middle('lingual-frenum', 166),
    middle('ridge-anterior', 218),
    middle('labial-frenum', 268),
    middle('labial-sulcus', 318),
  ],
};

/** The crest of the ridge, from end to end, as one broad stroke behind the buttons. */
export const RIDGE: Readonly<Record<Arch, string>> = {
  upper: 'M92 252 C 92 168 132 118 220 118 S 348 168 348 252',
  lower: 'M92 22 C 92 112 132 222 220 222 S 348 112 348 22',
};
