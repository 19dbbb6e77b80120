import type { RecordCapture } from '@archwright/contracts';
import { stageWords } from '../words/chair.js';
import { typedNumber } from './typed-number.js';

type TracingEntry = RecordCapture['tracings'][number];

/** One attempt as typed. */
export interface TracingDraft {
  stylusOn: TracingEntry['stylusOn'];
  view: TracingEntry['view'];
  posture: TracingEntry['posture'];
  apex: TracingEntry['apex'];
  armsComplete: boolean;
  basesStable: boolean;
  contact: boolean;
  pain: boolean;
  closurePoints: string;
  closureRmsMm: string;
  occlusalVerticalDimensionMm: string;
}

export const TRACING_CHOICES = {
  stylusOn: ['upper', 'lower'],
  view: ['as-worn', 'mirrored'],
  posture: ['upright', 'reclined', 'supine'],
  apex: ['clear', 'rounded', 'double', 'none'],
} as const;

export const TRACING_TICKS = ['armsComplete', 'basesStable', 'contact', 'pain'] as const;

/** Ranges as in the contract: what the server accepts. */
export const TRACING_NUMBERS = {
  closurePoints: { min: 0, max: 30 },
  closureRmsMm: { min: 0, max: 20 },
  occlusalVerticalDimensionMm: { min: 38, max: 98 },
} as const;

/** A new attempt starts from the conditions of the one before: they seldom change within a visit. */
export function nextTracing(last: TracingDraft | undefined): TracingDraft {
  return {
    stylusOn: last?.stylusOn ?? 'upper',
    view: last?.view ?? 'as-worn',
    posture: last?.posture ?? 'upright',
    apex: 'clear',
    armsComplete: false,
    basesStable: false,
    contact: false,
    pain: false,
    closurePoints: '',
    closureRmsMm: '',
    occlusalVerticalDimensionMm: last?.occlusalVerticalDimensionMm ?? '',
  };
}

const typed = (value: number | undefined): string => (value === undefined ? '' : String(value));

export const draftOfTracing = (entry: TracingEntry): TracingDraft => ({
  stylusOn: entry.stylusOn,
  view: entry.view,
  posture: entry.posture,
  apex: entry.apex,
  armsComplete: entry.armsComplete,
  basesStable: entry.basesStable,
  contact: entry.contact,
  pain: entry.pain,
  closurePoints: String(entry.closurePoints),
  closureRmsMm: typed(entry.closureRmsMm),
  occlusalVerticalDimensionMm: typed(entry.occlusalVerticalDimensionMm),
});

/** One attempt as it would be saved; the number of closure points counts as none when left empty. */
export function readTracing(
  draft: TracingDraft,
  attempt: number,
): { entry: TracingEntry } | { errors: Record<string, string> } {
  const errors: Record<string, string> = {};
  const read = (name: keyof typeof TRACING_NUMBERS): number | undefined => {
    if (draft[name].trim() === '') return undefined;
    const { min, max } = TRACING_NUMBERS[name];
    const value = typedNumber(draft[name]);
    const whole = name !== 'closurePoints' || Number.isInteger(value);
    if (value === null || value < min || value > max || !whole) errors[name] = stageWords.tracingRange(min, max);
    return value ?? undefined;
  };
  const closurePoints = read('closurePoints') ?? 0;
  const closureRmsMm = read('closureRmsMm');
  const occlusalVerticalDimensionMm = read('occlusalVerticalDimensionMm');
  if (Object.keys(errors).length > 0) return { errors };
  const { stylusOn, view, posture, apex, armsComplete, basesStable, contact, pain } = draft;
  return {
    entry: {
      attempt,
      stylusOn,
      view,
      posture,
      apex,
      armsComplete,
      basesStable,
      contact,
      pain,
      closurePoints,
      ...(closureRmsMm === undefined ? {} : { closureRmsMm }),
      ...(occlusalVerticalDimensionMm === undefined ? {} : { occlusalVerticalDimensionMm }),
    },
  };
}
