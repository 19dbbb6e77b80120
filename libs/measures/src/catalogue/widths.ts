import type { Measurement, MethodKey } from '../measurement.js';
import { fromMemory, published, type ClosedRange, type Source } from '../standing.js';

const OBJECT: MethodKey = {
  key: 'object',
  question: 'Measured on what?',
  options: ['natural-teeth', 'old-denture', 'photograph', 'cast', 'rim', 'set-up'],
  required: true,
};
const INSTRUMENT: MethodKey = {
  key: 'instrument',
  question: 'Measured with what?',
  options: ['caliper', 'ruler', 'photograph', 'face-scan'],
  required: false,
};

const width = (
  code: string,
  abbreviation: string,
  name: string,
  plausible: ClosedRange,
  usual: ClosedRange | null,
  method: readonly MethodKey[],
  source: Source,
): Measurement => ({
  code,
  abbreviation,
  name,
  group: 'widths',
  kind: 'number',
  unit: 'mm',
  plausible,
  usual,
  method,
  capturedAt: ['examination', 'jaw-relation'],
  carried: true,
  source,
  caution:
    'Relations of face and tooth widths are weak and contradict each other: a range for choosing, never one number alone.',
});

/** Widths of face and teeth for tooth selection. Usual ranges are published means with two standard deviations, where one was seen. */
export const WIDTH_MEASUREMENTS: readonly Measurement[] = [
  width(
    'interalar-width',
    'IAW',
    'Interalar width',
    { min: 22, max: 55 },
    { min: 28.8, max: 44 },
    [INSTRUMENT],
    published('mean 36.38, SD 3.81 (Iranian adults, Dental Anthropology); usual is the mean with two SD'),
  ),
  width(
    'bizygomatic-width',
    'BZW',
    'Bizygomatic width',
    { min: 105, max: 165 },
    null,
    [INSTRUMENT],
    published('Radia, J Prosthet Dent 2016;115:741, n=149'),
  ),
  width(
    'inner-canthal-width',
    'ICW',
    'Inner canthal width',
    { min: 20, max: 45 },
    { min: 23.7, max: 32.1 },
    [INSTRUMENT],
    published('women 27.9, SD 2.1; men 28.7, SD 1.7 (J Prosthet Dent 2002, n=229); usual spans both means with two SD'),
  ),
  width(
    'interpupillary-distance',
    'IPD',
    'Interpupillary distance',
    { min: 45, max: 80 },
    null,
    [INSTRUMENT],
    fromMemory('no mean seen'),
  ),
  width(
    'intercanine-distance',
    'ICAD',
    'Canine tip to canine tip',
    { min: 25, max: 45 },
    { min: 30, max: 38.3 },
    [OBJECT],
    published('mean 34.15, SD 2.05 (Iranian adults, Dental Anthropology); usual is the mean with two SD'),
  ),
  width(
    'six-anterior-width',
    'SIX',
    'Sum of the six upper anterior teeth',
    { min: 38, max: 60 },
    { min: 44, max: 52.4 },
    [OBJECT],
    published('mean 48.23, SD 2.07 (Iranian adults, Dental Anthropology); usual is the mean with two SD'),
  ),
  width(
    'central-incisor-width',
    'CIW',
    'Width of the upper central incisor',
    { min: 6.5, max: 11 },
    { min: 7.8, max: 9.9 },
    [OBJECT],
    published('men 8.87, SD 0.5; women 8.68, SD 0.4 (J Prosthet Dent 2002, n=229); usual spans both means with two SD'),
  ),
  width(
    'mouth-width',
    'MW',
    'Mouth width',
    { min: 35, max: 75 },
    null,
    [INSTRUMENT],
    published('correlated with the six anterior teeth, n=236 (Sayed, J Contemp Dent Pract 2017;18:541)'),
  ),
];
