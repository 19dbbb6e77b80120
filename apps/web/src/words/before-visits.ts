import { count, listed } from './plural.js';

/** Words of what is to be settled before the visits. */
export const beforeVisitsWords = {
  title: 'Before the visits',
  loading: 'what is to be settled',
  nothing: 'Nothing waits for a decision before the visits.',
  waiting: (arrivals: number, recalls: number, transfers: number) =>
    `${listed([
      ...(arrivals > 0 ? [`${count(arrivals, 'visit', 'visits')} whose work has not come`] : []),
      ...(recalls > 0 ? [`${count(recalls, 'check', 'checks')} to book`] : []),
      ...(transfers > 0 ? [`${count(transfers, 'case', 'cases')} on the way to another clinic`] : []),
    ])}.`,
  more: (n: number) => `The first ${String(n)} are shown; the others follow when these are settled.`,
};

export const arrivalWords = {
  title: 'Work that has not come',
  none: 'Every visit of the coming days has its work, or the plan still brings it. What falls behind appears here days before its visit.',
  visit: (when: string, clinic: string) => `Visit ${when}, ${clinic}`,
  missing: (things: string[]) => `Not there: ${listed(things)}.`,
  choices: {
    wait: { label: 'Wait for it', then: 'The visit stays as it is, and the call to the patient leaves the list.' },
    move: {
      label: 'Call and move it',
      then: 'The call to the patient stays on the list. The next screen moves the visit; nothing moves before you have seen what would move with it.',
    },
  },
};

export const recallWords = {
  title: 'Checks to book',
  none: 'No check after placement is due within the next four weeks. A placement makes them due; they appear here in time to be booked.',
  due: (when: string) => `due ${when}`,
  overdue: (when: string) => `due since ${when}`,
  book: 'Find a time',
  bookFor: (name: string) => `Find a time: ${name}`,
  choices: {
    'put-off': {
      label: 'Put off',
      then: 'The check is due on the day that you name, and comes back to this list then.',
      date: { label: 'Due on', missing: 'Choose a day from today on.' },
    },
    done: { label: 'Made without a visit', then: 'Such as on the telephone. The next recall is due by the rule.' },
    declined: { label: 'Declined', then: 'The patient does not want it. The next recall is due by the rule.' },
  },
};

export const transferWords = {
  title: 'Cases on their way',
  none: 'No case is on its way to another clinic. A proposed transfer waits here for the word of the clinic that takes over.',
  why: (reason: string) => `Why: ${reason}`,
  work: (n: number) => `${count(n, 'laboratory step', 'laboratory steps')} under way; the work follows the case.`,
  noWork: 'No laboratory work is under way.',
  objects: (codes: string[]) => `Goes along: ${listed(codes)}.`,
  noObjects: 'Nothing is kept that would go along.',
  elsewhere: 'Answered by the clinic that takes over.',
  choices: {
    accept: { label: 'Take it over', then: 'The case goes on at this clinic and is planned anew.' },
    decline: { label: 'Decline', then: 'The case goes on where it was, and this clinic no longer sees it.' },
    withdraw: { label: 'Withdraw the proposal', then: 'The case goes on where it is; the other clinic is told.' },
  } satisfies Record<'accept' | 'decline' | 'withdraw', { label: string; then: string }>,
  outside: {
    accept: { label: 'They take it over', then: 'The practice outside has agreed; the case stays handed over.' },
    decline: { label: 'They decline', then: 'The practice outside has declined; the case goes on where it was.' },
  },
};
