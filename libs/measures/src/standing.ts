/** How far a number can be trusted: who stands behind it. Shown beside every limit. */
export type Standing = 'published' | 'common practice' | 'project default' | 'memory';

/** Where a number comes from, in words a clinician can look up. */
export interface Source {
  readonly text: string;
  readonly standing: Standing;
}

/** Closed range: both ends belong to it. */
export interface ClosedRange {
  readonly min: number;
  readonly max: number;
}

/** True when `value` lies in the closed range. */
export function isWithin(range: ClosedRange, value: number): boolean {
  return value >= range.min && value <= range.max;
}

/** The range in words, `2 to 4 mm`. */
export function rangeText(range: ClosedRange, unit: string): string {
  return `${String(range.min)} to ${String(range.max)} ${unit}`;
}

export const fromMemory = (text: string): Source => ({ text: `${text} (from memory)`, standing: 'memory' });
export const published = (text: string): Source => ({ text, standing: 'published' });
export const commonPractice = (text = 'common practice, no source found'): Source => ({
  text,
  standing: 'common practice',
});
export const projectDefault = (text = 'project default, no published cut-off'): Source => ({
  text,
  standing: 'project default',
});
