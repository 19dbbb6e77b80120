import type { Arch } from '@archwright/contracts';

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
const both = (half: RegionPlace): RegionPlace[] => [
  { ...half, region: `${half.region}-right` },
  { ...half, region: `${half.region}-left`, x: DRAWING.width - half.x },
];
const middle = (region: string, y: number, words: string): RegionPlace => ({ region, x: DRAWING.width / 2, y, words });

/** Lips above in the upper arch, below in the lower: the two stand as they close. */
export const REGION_PLACES: Readonly<Record<Arch, readonly RegionPlace[]>> = {
  upper: [
    middle('labial-sulcus', 24, 'labial sulcus'),
    middle('labial-frenum', 74, 'labial frenum'),
    middle('ridge-anterior', 124, 'anterior ridge'),
    ...both({ region: 'buccal-sulcus', x: 36, y: 150, words: 'buccal sulcus' }),
    ...both({ region: 'ridge', x: 112, y: 150, words: 'ridge' }),
    ...both({ region: 'tuberosity', x: 92, y: 226, words: 'tuberosity' }),
    middle('palate', 194, 'palate'),
    middle('post-dam', 264, 'post-dam'),
  ],
  lower: [
    ...both({ region: 'retromolar', x: 92, y: 26, words: 'retromolar' }),
    ...both({ region: 'mylohyoid', x: 172, y: 42, words: 'mylohyoid' }),
    ...both({ region: 'buccal-sulcus', x: 36, y: 104, words: 'buccal sulcus' }),
    ...both({ region: 'ridge', x: 110, y: 104, words: 'ridge' }),
    ...both({ region: 'lingual', x: 184, y: 104, words: 'lingual' }),
    middle('lingual-frenum', 166, 'lingual frenum'),
    middle('ridge-anterior', 218, 'anterior ridge'),
    middle('labial-frenum', 268, 'labial frenum'),
    middle('labial-sulcus', 318, 'labial sulcus'),
  ],
};

/** The crest of the ridge, from end to end, as one broad stroke behind the buttons. */
export const RIDGE: Readonly<Record<Arch, string>> = {
  upper: 'M92 252 C 92 168 132 118 220 118 S 348 168 348 252',
  lower: 'M92 22 C 92 112 132 222 220 222 S 348 112 348 22',
};
