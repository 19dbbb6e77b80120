import type { SoreSpotView } from '@archwright/contracts';
import { messages as english } from './en/aftercare.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, {
  de: () => import('./de/aftercare.js'),
  ar: () => import('./ar/aftercare.js'),
});
const { aftercare, spot, adjustment, healing } = said;

const at = (when: string) => ({ when });
const byAt = (when: string, by: string) => ({ when, by });
const titled = (place: string) => ({ place });
const counted = (n: number) => ({ n });

const regionNames: Readonly<Record<string, string>> = aftercare.region;
const place = filled(aftercare.place, (arch: string, region: string) => ({ arch, region }));
const placeOfSide = filled(aftercare.placeOfSide, (arch: string, region: string, side: string) => ({
  arch,
  region,
  side,
}));

/** Words of what follows a placement: sore spots, adjustments, referrals, later checks. */
export const aftercareWords = {
  ...aftercare,
  title: filled(aftercare.title, (number: string) => ({ number })),
  /** "lower ridge left" */
  place: (arch: SoreSpotView['arch'], region: string): string => {
    const side = region.endsWith('-right') ? 'right' : region.endsWith('-left') ? 'left' : null;
    const name = side === null ? region : region.slice(0, -side.length - 1);
    const named = regionNames[name] ?? name;
    return side === null
      ? place(aftercare.archOf[arch], named)
      : placeOfSide(aftercare.archOf[arch], named, aftercare.side[side]);
  },
  placeState: filled(aftercare.placeState, (of: string, open: number, healed: number) => ({ place: of, open, healed })),
  head: filled(aftercare.head, (patient: string, sentence: string) => ({ patient, sentence })),
  adjusted: filled(aftercare.adjusted, (arch: string, surface: string, what: string, amount: string) => ({
    arch,
    surface,
    what,
    amount,
  })),
  found: filled(aftercare.found, byAt),
  pain: filled(aftercare.pain, counted),
  healed: filled(aftercare.healed, at),
  done: filled(aftercare.done, byAt),
  due: filled(aftercare.due, at),
};

/** Words of recording a sore spot. */
export const spotWords = {
  ...spot,
  title: filled(spot.title, titled),
  painOf: filled(spot.painOf, counted),
  need: { ...spot.need, foundOn: filled(spot.need.foundOn, (today: string) => ({ today })) },
};

/** Words of adjusting a denture. */
export const adjustmentWords = { ...adjustment, adjustHere: filled(adjustment.adjustHere, titled) };

/** Words of healing and of the referral when it does not heal. */
export const healingWords = {
  ...healing,
  decided: filled(healing.decided, (by: string, when: string) => ({ by, when })),
  decidedWith: filled(healing.decidedWith, (by: string, when: string, note: string) => ({ by, when, note })),
};
