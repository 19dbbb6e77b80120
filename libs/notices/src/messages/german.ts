import type { Words } from './words.js';

export const german: Words = {
  intlLocale: 'de',
  calendarTitle: 'Termin',
  subject: {
    reminder: (when) => `Erinnerung an Ihren Termin am ${when}`,
    itinerary: 'Ihre Termine',
    moved: 'Ihr Termin wurde verschoben',
    cancelled: 'Ihr Termin wurde abgesagt',
    colleagues: {
      decision: (caseNumber) => `${caseNumber}: Entscheidung nötig`,
      pause: (caseNumber) => `${caseNumber}: bitte anhalten`,
      settled: (caseNumber) => `${caseNumber}: der Plan ist geändert`,
      question: (caseNumber) => `${caseNumber}: Frage aus dem Labor`,
      answer: (caseNumber) => `${caseNumber}: Ihre Frage ist beantwortet`,
      rejection: (caseNumber) => `${caseNumber}: Arbeit zurückgewiesen`,
      lateness: (caseNumber) => `${caseNumber}: Arbeit wird später fertig`,
    },
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
  colleagues: {
    decision:
      'Eine Prüfung in diesem Fall verlangt Ihre Entscheidung. Der Befund und die vorgeschlagenen neuen Zeiten stehen im Fall.',
    pause:
      'Eine Prüfung in diesem Fall verlangt eine Entscheidung. Bitte bis dahin nicht über den jetzigen Schritt hinausgehen.',
    settled: 'Es ist entschieden, wie es in diesem Fall weitergeht. Die neuen Zeiten stehen im Fall.',
    question: 'Das Labor hat eine Frage zu diesem Fall. Die Arbeit ruht, bis sie beantwortet ist.',
    answer: 'Die Praxis hat Ihre Frage zu diesem Fall beantwortet. Die Arbeit kann weitergehen.',
    rejection:
      'Das Labor hat eine Arbeit zu diesem Fall zurückgewiesen; der Grund steht dort. Bitte entscheiden Sie, wie es weitergeht.',
    lateness:
      'Das Labor meldet, dass eine Arbeit zu diesem Fall später fertig wird. Wen es trifft und welche Pläne es auffangen, steht im Eintrag.',
  },
  nothingMoved: 'Noch wurde nichts verschoben.',
  open: 'Zum Fall:',
};
