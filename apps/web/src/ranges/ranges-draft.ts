import type { ChangeMeasurementRanges, MeasurementRangesView } from '@archwright/contracts';
import type { DraftPart } from '../drafts/differences.js';
import { rangeWords as words } from '../words/ranges.js';

/** What is typed, by key: empty stands for what is shipped. */
export interface RangesDraft {
  readonly usual: Readonly<Record<string, { min: string; max: string }>>;
  readonly limits: Readonly<Record<string, string>>;
  readonly reason: string;
}

export interface RangesErrors {
  readonly usual: Readonly<Record<string, string>>;
  readonly limits: Readonly<Record<string, string>>;
  readonly reason: string | undefined;
}

const text = (value: number | null | undefined): string => (value == null ? '' : String(value));

export const draftOfRanges = ({ usual, limits }: MeasurementRangesView): RangesDraft => ({
  usual: Object.fromEntries(usual.map(({ key, own }) => [key, { min: text(own?.min), max: text(own?.max) }])),
  limits: Object.fromEntries(limits.map(({ code, own }) => [code, text(own)])),
  reason: '',
});

/** What the practice has in place of what is shipped, in words. */
export const tellRanges = (draft: RangesDraft, { usual, limits }: MeasurementRangesView): DraftPart[] => [
  ...usual.map(({ key, name, group, unit }) => {
    const { min, max } = draft.usual[key] ?? { min: '', max: '' };
    const isOwn = min !== '' || max !== '';
    return {
      key,
      label: group === null ? name : words.nameOf(name, group),
      text: isOwn ? `${min}–${max} ${unit}` : '',
    };
  }),
  ...limits.map(({ code, meaning, unit }) => {
    const typed = draft.limits[code] ?? '';
    return { key: code, label: meaning, text: typed === '' ? '' : `${typed} ${unit}` };
  }),
];

/** What would be sent, or what each field accepts. */
export function readRanges(
  draft: RangesDraft,
  { usual, limits }: MeasurementRangesView,
): { body: ChangeMeasurementRanges } | { errors: RangesErrors } {
  const ownUsual: ChangeMeasurementRanges['usual'] = {};
  const ownLimits: ChangeMeasurementRanges['limits'] = {};
  const wrongUsual: Record<string, string> = {};
  const wrongLimits: Record<string, string> = {};
  for (const { key, plausible, unit } of usual) {
    const typed = draft.usual[key] ?? { min: '', max: '' };
    if (typed.min.trim() === '' && typed.max.trim() === '') continue;
    const [min, max] = [numberOf(typed.min), numberOf(typed.max)];
    if (min >= plausible.min && max <= plausible.max && min < max) ownUsual[key] = { min, max };
    else wrongUsual[key] = words.needSpan(plausible.min, plausible.max, unit);
  }
  for (const { code, adjustable, unit } of limits) {
    const typed = draft.limits[code] ?? '';
    if (typed.trim() === '' || adjustable === null) continue;
    const value = numberOf(typed);
    if (value >= adjustable.min && value <= adjustable.max) ownLimits[code] = value;
    else wrongLimits[code] = words.needLimit(adjustable.min, adjustable.max, unit);
  }
  const reason = draft.reason.trim();
  const isReason = reason.length >= 3 && reason.length <= 500;
  const isWrong = Object.keys({ ...wrongUsual, ...wrongLimits }).length > 0;
  if (isReason && !isWrong) return { body: { usual: ownUsual, limits: ownLimits, reason } };
  return { errors: { usual: wrongUsual, limits: wrongLimits, reason: isReason ? undefined : words.needReason } };
}

const numberOf = (typed: string): number => (typed.trim() === '' ? NaN : Number(typed.replace(',', '.')));
