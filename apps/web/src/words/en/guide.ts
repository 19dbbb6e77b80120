export const messages = {
  guide: {
    label: 'First task',
    step: 'First task, step {step} of {steps}:',
    hide: 'Hide the first task',
  },
  desk: {
    call: 'A patient calls. Press / and type alma, then Enter.',
    openCase: 'Choose “Open a case” beside her name.',
    choosePath: 'Choose a path for the upper arch; the lower one follows. Then find times.',
    offers: 'Compare the offers, hold one while she is on the phone, and confirm all visits.',
    booked:
      'Every visit and the laboratory work between them are booked. Try to move one: nothing changes before you have seen what would.',
  },
  bench: {
    work: 'Take the first work of a day: start it, and finish it or ask the clinic something.',
    ofCase: 'All the work of one case, with what the clinic ordered. Go back to the bench or on to the parcels.',
    parcels: 'Whatever leaves goes in a parcel, checked object by object where it arrives.',
  },
  chair: {
    board: 'Open a visit. Where the day has none, look at a later one.',
    stage: 'Type a measurement and watch its verdict; what the laboratory still needs stands beside it.',
    ofCase: 'The case on one line, from the first visit to the last check.',
  },
  practice: {
    waiting: 'Read what waits for a person, then open the day of a clinic.',
    day: 'Look at the day by chair or by clinician, then open a case by its number.',
    ofCase: 'Follow the case along its line: what is planned, what happened, and who did what.',
  },
};
