import type { Words } from './words.js';

export const german: Words = {
  intlLocale: 'de',
  calendarTitle: 'Termin',
  subject: {
    reminder: (when) => `Erinnerung an Ihren Termin am ${when}`,
    itinerary: 'Ihre Termine',
    moved: 'Ihr Termin wurde verschoben',
    cancelled: 'Ihr Termin wurde abgesagt',
    decision: (caseNumber) => `${caseNumber}: Entscheidung nötig`,
    pause: (caseNumber) => `${caseNumber}: bitte anhalten`,
  },
  hello: (givenName) => `Guten Tag ${givenName},`,
  reminder: 'wir erinnern Sie an Ihren Termin:',
  itinerary: (count, form) => (form === 'one' ? 'Sie haben einen Termin:' : `Sie haben ${String(count)} Termine:`),
  moved: 'Ihr Termin hat eine neue Zeit:',
  cancelled: 'dieser Termin findet nicht statt:',
  before: (when) => `Bisher: ${when}`,
  patientTime: (when) => `In Ihrer eigenen Zeitzone: ${when}`,
  provisional: '(noch nicht fest)',
  confirm: 'Ja, ich komme:',
  askToMove: 'Ich hätte gern eine andere Zeit:',
  details: 'Vorbereitung und Weiteres:',
  call: (phone) => `Oder rufen Sie uns an: ${phone}`,
  decision:
    'Eine Prüfung in diesem Fall verlangt Ihre Entscheidung. Der Befund und die vorgeschlagenen neuen Zeiten stehen im Fall.',
  pause:
    'Eine Prüfung in diesem Fall verlangt eine Entscheidung. Bitte bis dahin nicht über den jetzigen Schritt hinausgehen.',
  nothingMoved: 'Noch wurde nichts verschoben.',
  open: 'Zum Fall:',
};
