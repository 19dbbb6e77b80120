import type { TreatmentPath } from '../path-schema.js';
import { abbreviated } from './abbreviated.js';
import { conventional } from './conventional.js';
import { digital } from './digital.js';
import { duplicate } from './duplicate.js';
import { immediate } from './immediate.js';
import { overdenture } from './overdenture.js';
import { reline } from './reline.js';
import { repair } from './repair.js';

/** The paths a practice starts from; it copies and changes them, an open case stays on the version it pinned. */
export const shippedPaths: readonly TreatmentPath[] = [
  conventional,
  abbreviated,
  digital,
  immediate,
  duplicate,
  reline,
  overdenture,
  repair,
];
