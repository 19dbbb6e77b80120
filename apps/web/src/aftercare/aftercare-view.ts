import type { AdjustmentView, AftercareView, Arch, SoreSpotView } from '@archwright/contracts';
import type { Tone } from '../look/marks.js';
import { dateAndTime, shortDate } from '../time/wording.js';
import { adjustmentWords, aftercareWords as words, healingWords } from '../words/aftercare.js';
import { REGION_PLACES, type RegionPlace } from './region-places.js';

export interface RegionState extends RegionPlace {
  arch: Arch;
  open: number;
  healed: number;
  /** The whole of it in words. */
  name: string;
}

/** Every region of the arches of a case, with how many sore spots are open and healed there. */
export const regionStates = (arches: readonly Arch[], spots: readonly SoreSpotView[]): RegionState[] =>
  arches.flatMap((arch) =>
    REGION_PLACES[arch].map((place) => {
      const here = spots.filter((spot) => spot.arch === arch && spot.region === place.region);
      const healed = here.filter(({ healedOn }) => healedOn !== null).length;
      const open = here.length - healed;
      return { ...place, arch, open, healed, name: words.placeState(words.place(arch, place.region), open, healed) };
    }),
  );

export interface AdjustmentRow {
  id: string;
  what: string;
  done: string;
}

export interface SpotRow {
  id: string;
  version: number;
  arch: Arch;
  place: string;
  found: string;
  pain: string;
  cause: string;
  note: string | null;
  tone: Tone;
  state: string;
  watch: string;
  isOpen: boolean;
  adjustments: AdjustmentRow[];
  referral: ReferralRow | null;
}

interface ReferralRow {
  id: string;
  version: number;
  state: string;
  reason: string;
  isOpen: boolean;
  decided: string | null;
}

interface Calendar {
  zone: string;
  today: string;
}

const TONE: Record<SoreSpotView['watch']['state'], Tone> = { healed: 'go', watched: 'plain', refer: 'stop' };

/** Sore spots as the server lists them: open ones first, then the latest. */
export const spotRows = (spots: readonly SoreSpotView[], calendar: Calendar): SpotRow[] =>
  spots.map((spot) => ({
    id: spot.id,
    version: spot.version,
    arch: spot.arch,
    place: words.place(spot.arch, spot.region),
    found: words.found(shortDate(spot.foundOn, calendar.today), spot.foundBy),
    pain: words.pain(spot.pain),
    cause: words.cause[spot.suspectedCause],
    note: spot.note,
    tone: TONE[spot.watch.state],
    state: spot.healedOn ? words.healed(shortDate(spot.healedOn, calendar.today)) : words.watch[spot.watch.state],
    watch: spot.watch.reason,
    isOpen: spot.healedOn === null,
    adjustments: adjustmentRows(spot.adjustments, calendar),
    referral: spot.referral && referralRow(spot.referral, calendar),
  }));

export const adjustmentRows = (adjustments: readonly AdjustmentView[], { zone, today }: Calendar): AdjustmentRow[] =>
  adjustments.map(({ id, arch, surface, what, amount, doneAt, doneBy }) => ({
    id,
    what: words.adjusted(words.arch[arch], adjustmentWords.surfaces[surface], what, amount),
    done: words.done(dateAndTime(doneAt, zone, today), doneBy),
  }));

function referralRow(task: NonNullable<SoreSpotView['referral']>, { zone, today }: Calendar): ReferralRow {
  const { id, version, state, reason, decidedAt, decidedBy, decisionNote } = task;
  const when = decidedAt && dateAndTime(decidedAt, zone, today);
  return {
    id,
    version,
    state: healingWords.referralState[state],
    reason,
    isOpen: state === 'open',
    decided:
      when && decidedBy
        ? decisionNote
          ? healingWords.decidedWith(decidedBy, when, decisionNote)
          : healingWords.decided(decidedBy, when)
        : null,
  };
}

export interface LaterCheckRow {
  id: string;
  title: string;
  due: string;
  state: string;
}

export const laterCheckRows = (recalls: AftercareView['recalls'], today: string): LaterCheckRow[] =>
  recalls.map(({ id, title, dueOn, state }) => ({
    id,
    title,
    due: words.due(shortDate(dueOn, today)),
    state: words.recallState[state],
  }));
