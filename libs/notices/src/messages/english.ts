import type { Words } from './words.js';

export const english: Words = {
  intlLocale: 'en-GB',
  calendarTitle: 'Appointment',
  subject: {
    reminder: (when) => `Reminder: your appointment on ${when}`,
    itinerary: 'Your appointments',
    moved: 'Your appointment has moved',
    cancelled: 'Your appointment is cancelled',
    colleagues: {
      decision: (caseNumber) => `${caseNumber}: a decision is needed`,
      pause: (caseNumber) => `${caseNumber}: please pause`,
      settled: (caseNumber) => `${caseNumber}: the plan has changed`,
      question: (caseNumber) => `${caseNumber}: the laboratory asks`,
      answer: (caseNumber) => `${caseNumber}: your question is answered`,
      rejection: (caseNumber) => `${caseNumber}: work was rejected`,
      lateness: (caseNumber) => `${caseNumber}: work will be late`,
    },
  },
  hello: (givenName) => `Hello ${givenName},`,
  reminder: 'this is a reminder of your appointment:',
  itinerary: (count, form) =>
    form === 'one' ? 'you have one appointment:' : `you have ${String(count)} appointments:`,
  moved: 'your appointment has a new time:',
  cancelled: 'this appointment will not take place:',
  before: (when) => `It was before: ${when}`,
  patientTime: (when) => `In your own time zone: ${when}`,
  provisional: '(not yet fixed)',
  confirm: 'Yes, I am coming:',
  askToMove: 'I would like another time:',
  details: 'What to prepare, and more:',
  call: (phone) => `Or call us: ${phone}`,
  colleagues: {
    decision:
      'A check on this case asks for your decision. What was found, and the new times proposed, stand in the case.',
    pause: 'A check on this case asks for a decision. Please do not go past the present step until it is made.',
    settled: 'It is decided how this case goes on. The new times stand in the case.',
    question: 'The laboratory has a question about this case. Its work stands still until it is answered.',
    answer: 'The clinic has answered your question about this case. The work may go on.',
    rejection: 'The laboratory has rejected work on this case; its reason stands there. Please decide how it goes on.',
    lateness:
      'The laboratory says that work on this case will be late. Who is affected, and plans that repair it, stand in the entry.',
  },
  nothingMoved: 'Nothing has been moved yet.',
  open: 'Open the case:',
};
