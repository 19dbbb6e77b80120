import type { Standing } from '@archwright/measures';

export const messages = {
  ranges: {
    title: 'Usual ranges and limits',
    link: 'Ranges',
    sentence:
      '{own, plural, =0 {All as shipped} other {# of your own}}. What you change is judged by from the next saved measurement on.',
    loading: 'the ranges',
    usual: 'Usual ranges',
    limits: 'Limits of checks',
    columns: { name: 'Measurement', shipped: 'Shipped', least: 'Your least', most: 'Your most', source: 'Source' },
    limitColumns: { name: 'Limit', shipped: 'Shipped', own: 'Yours', source: 'Source' },
    nameOf: '{name}, {group}',
    none: 'none known',
    span: '{min, number} to {max, number} {unit}',
    value: '{value, number} {unit}',
    source: '{source} ({standing})',
    standings: {
      published: 'published',
      'common practice': 'common practice',
      'project default': 'project default',
      memory: 'memory',
    } satisfies Record<Standing, string>,
    fixed: 'not to be changed',
    least: 'Least of {name}',
    most: 'Most of {name}',
    limit: 'Your limit: {name}',
    needSpan: 'Enter both, or neither: the least below the most, from {min, number} to {max, number} {unit}.',
    needLimit: 'Enter a number from {min, number} to {max, number} {unit}, or nothing.',
    reason: 'Why it is changed',
    needReason: 'Say in 3 to 500 characters why; it stays on the record.',
    save: 'Save the ranges',
    saved: 'Saved.',
    history: 'What was changed before',
    historyColumns: { at: 'When', by: 'Who', why: 'Why' },
  },
};
