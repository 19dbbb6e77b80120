export const messages = {
  itinerary: {
    title: 'Visits of {patient}',
    sentence: '{n, plural, one {# visit} other {# visits}} to come, case {number}.',
    loading: 'the visits',
    back: 'Back to the case',
    print: 'Print',
    calendar: 'Calendar file',
    send: { mail: 'Mail it again', call: 'Put on the call list' },
    sent: { mail: 'The mail goes out within seconds.', call: 'It stands on the call list.' },
    none: 'No visit to come. Plan the case, and its visits appear here.',
    provisional: 'not firm yet',
    columns: { when: 'When', what: 'What for', where: 'Where' },
  },
};
