import type { Words } from './words.js';

export const english: Words = {
  intlLocale: 'en-GB',
  calendarTitle: 'Appointment',
  subject: {
    reminder: (when) => `Reminder: your appointment on ${when}`,
    itinerary: 'Your appointments',
    moved: 'Your appointment has moved',
    cancelled: 'Your appointment is cancelled',
    decision: (caseNumber) => `${caseNumber}: a decision is needed`,
    pause: (caseNumber) => `${caseNumber}: please pause`,
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
  decision:
    'A check on this case asks for your decision. What was found, and the new times proposed, stand in the case.',
  pause: 'A check on this case asks for a decision. Please do not go past the present step until it is made.',
  nothingMoved: 'Nothing has been moved yet.',
  open: 'Open the case:',
};
