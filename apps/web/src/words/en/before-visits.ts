export const messages = {
  beforeVisits: {
    title: 'Before the visits',
    loading: 'what is to be settled',
    nothing: 'Nothing waits for a decision before the visits.',
    arrivals: '{n, plural, one {# visit whose work has not come} other {# visits whose work has not come}}',
    recalls: '{n, plural, one {# check to book} other {# checks to book}}',
    transfers: '{n, plural, one {# case on the way to another clinic} other {# cases on the way to another clinic}}',
    waiting: '{parts}.',
    more: 'The first {n} are shown; the others follow when these are settled.',
  },
  arrival: {
    title: 'Work that has not come',
    none: 'Every visit of the coming days has its work, or the plan still brings it. What falls behind appears here days before its visit.',
    visit: 'Visit {when}, {clinic}',
    missing: 'Not there: {things}.',
    choices: {
      wait: { label: 'Wait for it', then: 'The visit stays as it is, and the call to the patient leaves the list.' },
      move: {
        label: 'Call and move it',
        then: 'The call to the patient stays on the list. The next screen moves the visit; nothing moves before you have seen what would move with it.',
      },
    },
  },
  recall: {
    title: 'Checks to book',
    none: 'No check after placement is due within the next four weeks. A placement makes them due; they appear here in time to be booked.',
    due: 'due {when}',
    overdue: 'due since {when}',
    about: '{title}, {number}',
    book: 'Find a time',
    bookFor: 'Find a time: {name}',
    choices: {
      'put-off': {
        label: 'Put off',
        then: 'The check is due on the day that you name, and comes back to this list then.',
        date: { label: 'Due on', missing: 'Choose a day from today on.' },
      },
      done: { label: 'Made without a visit', then: 'Such as on the telephone. The next recall is due by the rule.' },
      declined: { label: 'Declined', then: 'The patient does not want it. The next recall is due by the rule.' },
    },
  },
  transfer: {
    title: 'Cases on their way',
    none: 'No case is on its way to another clinic. A proposed transfer waits here for the word of the clinic that takes over.',
    why: 'Why: {reason}',
    work: '{n, plural, one {# laboratory step} other {# laboratory steps}} under way; the work follows the case.',
    noWork: 'No laboratory work is under way.',
    objects: 'Goes along: {codes}.',
    noObjects: 'Nothing is kept that would go along.',
    elsewhere: 'Answered by the clinic that takes over.',
    choices: {
      accept: { label: 'Take it over', then: 'The case goes on at this clinic and is planned anew.' },
      decline: { label: 'Decline', then: 'The case goes on where it was, and this clinic no longer sees it.' },
      withdraw: { label: 'Withdraw the proposal', then: 'The case goes on where it is; the other clinic is told.' },
    },
    outside: {
      accept: { label: 'They take it over', then: 'The practice outside has agreed; the case stays handed over.' },
      decline: { label: 'They decline', then: 'The practice outside has declined; the case goes on where it was.' },
    },
  },
};
