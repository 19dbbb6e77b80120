export const messages = {
  audit: {
    title: 'Who did what',
    link: 'Audit trail',
    sentence:
      '{isAll, select, yes {{shown, plural, one {# entry} other {# entries}}, the latest first.} other {The latest {shown, plural, one {# entry} other {# entries}}; there are more.}}',
    loading: 'the audit trail',
    none: 'No entry fits. Search with fewer words or more days.',
    fields: {
      by: 'Who',
      deed: 'Deed or its beginning',
      case: 'Case number',
      from: 'From',
      until: 'Until',
    },
    anybody: 'Anybody',
    service: 'the service',
    find: 'Search',
    more: 'Show earlier entries',
    need: {
      deed: 'Enter lower-case words joined by hyphens, such as visit-moved.',
      case: 'Enter a case number such as 27-0012.',
      until: 'Choose the first day or a later one.',
    },
    columns: { at: 'When', by: 'Who', deed: 'Deed', about: 'About', details: 'Details' },
    about: '{name}, {kind}',
  },
};
