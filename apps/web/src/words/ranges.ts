/** Words of the screen on which a practice sets its own usual ranges and limits. */
export const rangeWords = {
  title: 'Usual ranges and limits',
  link: 'Ranges',
  sentence: (own: number) =>
    own === 0
      ? 'All as shipped. What you change is judged by from the next saved measurement on.'
      : `${String(own)} of your own. What you change is judged by from the next saved measurement on.`,
  loading: 'the ranges',
  usual: 'Usual ranges',
  limits: 'Limits of checks',
  columns: { name: 'Measurement', shipped: 'Shipped', least: 'Your least', most: 'Your most', source: 'Source' },
  limitColumns: { name: 'Limit', shipped: 'Shipped', own: 'Yours', source: 'Source' },
  none: 'none known',
  span: (min: number, max: number, unit: string) => `${String(min)} to ${String(max)} ${unit}`,
  fixed: 'not to be changed',
  least: (name: string) => `Least of ${name}`,
  most: (name: string) => `Most of ${name}`,
  limit: (name: string) => `Your limit: ${name}`,
  needSpan: (min: number, max: number, unit: string) =>
    `Enter both, or neither: the least below the most, from ${String(min)} to ${String(max)} ${unit}.`,
  needLimit: (min: number, max: number, unit: string) =>
    `Enter a number from ${String(min)} to ${String(max)} ${unit}, or nothing.`,
  reason: 'Why it is changed',
  needReason: 'Say in 3 to 500 characters why; it stays on the record.',
  save: 'Save the ranges',
  saved: 'Saved.',
  history: 'What was changed before',
  historyColumns: { at: 'When', by: 'Who', why: 'Why' },
};
