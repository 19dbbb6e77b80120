import type { LabOrderView } from '@archwright/contracts';

export const messages = {
  labOrders: {
    title: 'Orders to other laboratories',
    titleAtLab: 'Orders from practices',
    link: 'Orders to other laboratories',
    linkAtLab: 'Orders from practices',
    sentence:
      '{out, plural, =0 {No order is under way} one {# order is under way} other {# orders are under way}}{care, plural, =0 {.} one {, # needs a person.} other {, # need a person.}}',
    loading: 'the orders',
    out: 'Under way',
    over: 'Over',
    none: 'No order has been sent. Work that is ordered from a laboratory of its own appears here with its answer and its date.',
    noneAtLab: 'No practice has ordered work here yet. An order appears here as soon as a practice has sent it.',
    more: 'Show earlier ones',
    states: {
      ordered: 'waits for an answer',
      accepted: 'accepted',
      declined: 'declined',
      withdrawn: 'withdrawn',
      finished: 'finished',
    } satisfies Record<LabOrderView['state'], string>,
    care: {
      unanswered: 'not answered for more than a day',
      'needed-past': 'needed already, not answered',
      'promised-late': 'promised later than needed',
      overdue: 'promised day is over, not finished',
    },
    work: '{stage}: {steps}, {arches}',
    to: 'to {laboratory}',
    from: 'from {practice}, {clinic}',
    sent: 'sent {when}',
    needed: 'needed {when}',
    promised: 'promised {when}',
    declined: 'Declined: {reason}',
    about: 'order {number}',
    contents: 'Values and objects',
    noObjects: 'No objects travel; the work goes as files.',
    done: 'Noted: {what}, order {number}.',
    choices: {
      accept: { label: 'Accept as needed', then: 'The practice reads that the work will be back {needed}.' },
      'accept-other': {
        label: 'Accept for another day',
        then: 'The practice reads the day. If it is later than needed, it is told so and plans anew.',
      },
      promise: { label: 'Another day', then: 'The practice reads the new day instead of the one promised so far.' },
      finish: { label: 'Finished', then: 'The practice reads that the work is finished.' },
      decline: { label: 'Decline', then: 'The work goes back to the practice, with your reason.' },
      withdraw: {
        label: 'Withdraw',
        then: 'The laboratory reads that the order is taken back; the work waits here to be planned again.',
      },
    },
    day: 'Back in the clinic on, by {time}',
    dayMissing: 'Choose a day that is still to come.',
  },
};
