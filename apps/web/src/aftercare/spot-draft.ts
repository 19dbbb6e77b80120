import {
  recordAdjustment,
  recordSoreSpot,
  type Arch,
  type RecordAdjustment,
  type RecordSoreSpot,
} from '@archwright/contracts';
import { adjustmentWords, spotWords } from '../words/aftercare.js';

export interface SpotDraft {
  foundOn: string;
  pain: string;
  suspectedCause: string;
  note: string;
}

type Errors<Draft> = Partial<Record<keyof Draft, string>>;

/** A sore spot as typed, or what is still missing at which field. */
export function readSpot(
  place: { arch: Arch; region: string },
  { foundOn, pain, suspectedCause, note }: SpotDraft,
  today: string,
): { body: RecordSoreSpot } | { errors: Errors<SpotDraft> } {
  const errors: Errors<SpotDraft> = {
    ...(foundOn === '' || foundOn > today ? { foundOn: spotWords.need.foundOn(today) } : {}),
    ...(pain === '' ? { pain: spotWords.need.pain } : {}),
    ...(suspectedCause === '' ? { suspectedCause: spotWords.need.suspectedCause } : {}),
  };
  if (Object.keys(errors).length > 0) return { errors };
  const { arch, region } = place;
  const said = note.trim() === '' ? null : note;
  return { body: recordSoreSpot.parse({ arch, region, foundOn, pain: Number(pain), suspectedCause, note: said }) };
}

export interface AdjustmentDraft {
  arch: string;
  surface: string;
  what: string;
  amount: string;
}

/** An adjustment as typed, or what is still missing at which field. */
export function readAdjustment(
  soreSpotId: string | null,
  { arch, surface, what, amount }: AdjustmentDraft,
): { body: RecordAdjustment } | { errors: Errors<AdjustmentDraft> } {
  const errors: Errors<AdjustmentDraft> = {
    ...(surface === '' ? { surface: adjustmentWords.need.surface } : {}),
    ...(what.trim() === '' ? { what: adjustmentWords.need.words } : {}),
    ...(amount.trim() === '' ? { amount: adjustmentWords.need.words } : {}),
  };
  if (Object.keys(errors).length > 0) return { errors };
  return { body: recordAdjustment.parse({ arch, soreSpotId, surface, what, amount }) };
}
