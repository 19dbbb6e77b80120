import { count } from './plural.js';

/** Words of the screen that shows how the practice does. */
export const figureWords = {
  title: 'How the practice does',
  link: 'Figures',
  sentence: (outside: number, since: string) =>
    `${outside === 0 ? 'Nothing stands out' : `${count(outside, 'point stands', 'points stand')} out`} since ${since}.`,
  tooLittle: 'There is too little yet to judge by.',
  loading: 'the figures',
  titles: {
    'promise-kept': 'Placed by the day first promised',
    remake: 'Something made again before the placement',
    'missed-visit': 'Visits missed',
    'lead-time': 'Days from opening the case to the placement',
    'visits-per-case': 'Visits up to the placement',
  },
  per: { 'promise-kept': 'Cases placed', remake: 'Cases placed', 'missed-visit': 'Visits due' },
  noneTitle: 'Nothing to count yet',
  none: (titles: string) => `With the first placed case and the first visit that is over appear: ${titles}.`,
  shareSentence: (events: number, size: number, months: number) =>
    `${String(events)} of ${String(size)} in ${count(months, 'month', 'months')}: ${percent(events / size)}.`,
  valueSentence: (average: string, unit: string, cases: number) =>
    `${average} ${unit} on the average of ${count(cases, 'case', 'cases')}.`,
  units: { days: 'days', visits: 'visits' },
  standing: {
    'too-few-months': (needed: number) => `Limits are drawn from ${String(needed)} months on.`,
    'too-few-cases': (needed: number) => `Limits are drawn from ${String(needed)} cases on.`,
    'no-spread': 'Every point is the same, so there are no limits to draw.',
    charted: (outside: number) =>
      outside === 0
        ? 'No point lies outside what chance explains.'
        : `${count(outside, 'point lies', 'points lie')} outside what chance explains: look for the cause.`,
  },
  outside: 'outside',
  inside: 'inside',
  centre: 'average',
  limits: 'limits',
  table: 'The same as a table',
  shareColumns: { month: 'Month', events: 'Counted', size: 'Of', share: 'Share', limits: 'Limits', verdict: 'Verdict' },
  valueColumns: { case: 'Case', on: 'Placed on', value: 'Value', verdict: 'Verdict' },
  use: {
    title: 'Use of chairs, clinicians and benches',
    sentence: (from: string, until: string) => `Hours booked of hours open, ${from} to ${until}.`,
    columns: { name: 'Name', place: 'Where', booked: 'Booked', open: 'Open', share: 'Used' },
    kinds: { chair: 'Chairs', clinician: 'Clinicians', 'work-centre': 'Work centres' },
    hours: (hours: number) => `${String(Math.round(hours * 10) / 10)} h`,
    closed: 'not open',
  },
};

export const percent = (share: number): string => `${String(Math.round(share * 100))} %`;
