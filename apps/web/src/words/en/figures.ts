import type { ShareFigure, UseFigure, ValueFigure } from '@archwright/contracts';

export const messages = {
  figures: {
    title: 'How the practice does',
    link: 'Figures',
    sentence:
      '{outside, plural, =0 {Nothing stands out} one {# point stands out} other {# points stand out}} since {since}.',
    tooLittle: 'There is too little yet to judge by.',
    loading: 'the figures',
    titles: {
      'promise-kept': 'Placed by the day first promised',
      remake: 'Something made again before the placement',
      'missed-visit': 'Visits missed',
      'lead-time': 'Days from opening the case to the placement',
      'visits-per-case': 'Visits up to the placement',
    } satisfies Record<ShareFigure['key'] | ValueFigure['key'], string>,
    per: { 'promise-kept': 'Cases placed', remake: 'Cases placed', 'missed-visit': 'Visits due' } satisfies Record<
      ShareFigure['key'],
      string
    >,
    noneTitle: 'Nothing to count yet',
    none: 'With the first placed case and the first visit that is over appear: {titles}.',
    shareSentence: '{events} of {size} in {months, plural, one {# month} other {# months}}: {share}.',
    valueSentence: {
      days: '{average, number, ::.0 group-off} days on the average of {cases, plural, one {# case} other {# cases}}.',
      visits:
        '{average, number, ::.0 group-off} visits on the average of {cases, plural, one {# case} other {# cases}}.',
    } satisfies Record<ValueFigure['unit'], string>,
    values: {
      days: '{n, plural, one {# day} other {# days}}',
      visits: '{n, plural, one {# visit} other {# visits}}',
    } satisfies Record<ValueFigure['unit'], string>,
    percent: '{n} %',
    span: '{lower} to {upper}',
    pictureOf: '{title}. {sentence}',
    standing: {
      'too-few-months': 'Limits are drawn from {needed} months on.',
      'too-few-cases': 'Limits are drawn from {needed} cases on.',
      'no-spread': 'Every point is the same, so there are no limits to draw.',
      charted:
        '{outside, plural, =0 {No point lies outside what chance explains.} one {# point lies outside what chance explains: look for the cause.} other {# points lie outside what chance explains: look for the cause.}}',
    },
    outside: 'outside',
    inside: 'inside',
    table: 'The same as a table',
    shareColumns: {
      month: 'Month',
      events: 'Counted',
      size: 'Of',
      share: 'Share',
      limits: 'Limits',
      verdict: 'Verdict',
    },
    valueColumns: { case: 'Case', on: 'Placed on', value: 'Value', verdict: 'Verdict' },
    use: {
      title: 'Use of chairs, clinicians and benches',
      sentence: 'Hours booked of hours open, {from} to {to}.',
      columns: { name: 'Name', place: 'Where', booked: 'Booked', open: 'Open', share: 'Used' },
      kinds: { chair: 'Chairs', clinician: 'Clinicians', 'work-centre': 'Work centres' } satisfies Record<
        UseFigure['kind'],
        string
      >,
      hours: '{hours, number, ::.# group-off} h',
      closed: 'not open',
    },
  },
};
