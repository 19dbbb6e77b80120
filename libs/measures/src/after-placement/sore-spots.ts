import { Temporal } from 'temporal-polyfill';
import { InvalidValueError } from '../errors.js';
import type { Arch } from '../measurement.js';

/** Regions of the sore-spot map; sides are the patient's. */
export const SORE_SPOT_REGIONS: Readonly<Record<Arch, readonly string[]>> = {
  upper: [
    'labial-sulcus',
    'labial-frenum',
    'buccal-sulcus-right',
    'buccal-sulcus-left',
    'tuberosity-right',
    'tuberosity-left',
    'ridge-right',
    'ridge-anterior',
    'ridge-left',
    'palate',
    'post-dam',
  ],
  lower: [
    'labial-sulcus',
    'labial-frenum',
    'buccal-sulcus-right',
    'buccal-sulcus-left',
    'retromolar-right',
    'retromolar-left',
    'ridge-right',
    'ridge-anterior',
    'ridge-left',
    'lingual-right',
    'lingual-left',
    'lingual-frenum',
    'mylohyoid-right',
    'mylohyoid-left',
  ],
};

/** One sore spot followed over visits; dates are calendar dates of the clinic, `2026-11-02`. */
export interface SoreSpot {
  readonly arch: Arch;
  readonly region: string;
  readonly foundOn: string;
  /** Dates on which the denture was relieved here. */
  readonly adjustedOn: readonly string[];
  /** Null while it has not healed. */
  readonly healedOn: string | null;
}

export interface SoreSpotStatus {
  readonly state: 'healed' | 'watched' | 'refer';
  /** From this date on it is referred if it has not healed. Null once healed. */
  readonly referOn: string | null;
  readonly reason: string;
}

const WATCH_DAYS = 14;

/**
 * The two-week counter of a sore spot. It starts with the first adjustment (with the finding while there was none) and is
 * not restarted by later ones: a sore that outlasts two weeks is not a denture problem until shown otherwise.
 *
 * @param on the date asked about, in the clinic's zone
 * @throws {InvalidValueError} for an unknown region or a date that is none
 */
export function soreSpotStatus(spot: SoreSpot, on: string): SoreSpotStatus {
  const regions = SORE_SPOT_REGIONS[spot.arch];
  if (!regions.includes(spot.region))
    throw new InvalidValueError('not-an-option', 'sore spot region', spot.region, regions.join(', '));
  if (spot.healedOn !== null)
    return { state: 'healed', referOn: null, reason: `Healed on ${plainDate(spot.healedOn).toString()}.` };
  const adjusted = spot.adjustedOn.map(plainDate).sort((a, b) => Temporal.PlainDate.compare(a, b));
  const start = adjusted[0] ?? plainDate(spot.foundOn);
  const referOn = start.add({ days: WATCH_DAYS }).toString();
  const since = `${adjusted.length > 0 ? 'first adjusted' : 'found'} on ${start.toString()}`;
  return Temporal.PlainDate.compare(plainDate(on), plainDate(referOn)) >= 0
    ? {
        state: 'refer',
        referOn,
        reason: `Still sore two weeks after it was ${since}: refer. Not a denture problem until shown otherwise.`,
      }
    : { state: 'watched', referOn, reason: `Sore spot ${since}: refer on ${referOn} if it has not healed.` };
}

function plainDate(text: string): Temporal.PlainDate {
  try {
    return Temporal.PlainDate.from(text, { overflow: 'reject' });
  } catch {
    throw new InvalidValueError('not-an-option', 'date', text, 'a calendar date such as 2026-11-02');
  }
}
