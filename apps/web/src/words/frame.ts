import type { Problem, Role } from '@archwright/contracts';

/** Words of the frame that every workplace shares. */
export const frameWords = {
  name: 'Archwright',
  skip: 'Go to the work',
  places: { desk: 'Desk', bench: 'Bench', chair: 'Chair', practice: 'Practice' },
  placesLabel: 'Workplaces',
  find: 'Name, case, birth date or day',
  findCase: 'Find a case number',
  findKey: 'Press / to search',
  caughtMail: 'Caught mail',
  password: 'Password',
  signOut: 'Sign out',
  appearance: { auto: 'Colours: as the system', light: 'Colours: light', dark: 'Colours: dark' },
  roles: {
    'front-desk': 'front desk',
    lab: 'laboratory',
    clinician: 'clinician',
    manager: 'manager',
    administrator: 'administrator',
  } satisfies Record<Role, string>,
  loading: (what: string) => `Fetching ${what} …`,
  again: 'Try again',
  accepted: 'Accepted',
  offline:
    'No connection. What you see was fetched earlier; what you type stays here and can be saved once the connection is back.',
  lineDown:
    'The service does not answer at the moment. What you see may be out of date; what you type stays here. It is tried again all the time.',
  unreachable: 'The server cannot be reached. Nothing was lost: what you typed is still here. Try again in a moment.',
  badAnswer: (detail: string) =>
    `The server and this page do not agree (${detail}). Reload the page; if it stays, tell whoever looks after the service.`,
  unexpected: 'Something on this page went wrong. Reload it; nothing that was saved is lost.',
  problem: (problem: Problem) => {
    const known = byCode[problem.code];
    return known ?? (problem.detail || problem.title);
  },
  conflictTitle: 'Someone else saved a change meanwhile.',
  conflictBody: 'The newest state can be loaded with what you typed kept on top of it, or in place of it.',
  keepMine: 'Load it, keep what I typed',
  takeTheirs: 'Load it, drop what I typed',
  changedMeanwhile: 'Changed by someone else just now; this is the newest state.',
  seen: 'Seen',
  clashBody: 'Both versions stand here. Nothing is saved until you choose.',
  clashField: 'Field',
  clashMine: 'What you typed',
  clashTheirs: 'What was saved',
  clashEmpty: 'nothing',
  clashKeepMine: 'Keep what I typed',
  clashTakeTheirs: 'Take what was saved',
  notFoundTitle: 'Nothing here',
  notFound:
    'There is no such page, or it belongs to someone else. The search at the top finds patients, cases and dates.',
  crashTitle: 'This page could not be drawn',
  home: 'Go to the first page',
  today: 'Today',
  earlier: 'Earlier',
  later: 'Later',
  day: 'Day',
  cancel: 'Not now',
};

/** Words for refusals whose code is known; any other is shown in the server's own words. */
const byCode: Record<string, string> = {
  'request.precondition-required': 'The page is out of step with the server. Reload it and try again.',
};

/** Words of a decision with its reason, wherever one is taken. */
export const decisionWords = {
  about: (what: string) => `Decide: ${what}`,
  reason: 'Reason',
  note: 'Note, if there is something to say',
  reasonMissing: 'Give a reason of up to 500 characters.',
  save: 'Decide so',
  saveOf: (choice: string, about: string) => `Decide so: ${choice}, ${about}`,
  outrun: 'Someone else saved a change meanwhile.',
  newest: 'What you see now is the newest state; what you typed is kept.',
};

/** Words of the sign-in page. */
export const signInWords = {
  title: 'Sign in',
  sentence: 'Cases planned from the first visit to the last.',
  again: 'You have been signed out after a while. Sign in to go on where you were; nothing you typed is lost.',
  name: 'Sign-in name',
  password: 'Password',
  showPassword: 'Show the password',
  enter: 'Sign in',
  nameMissing: 'Enter your sign-in name.',
  passwordMissing: 'Enter your password.',
  wrong: 'Name and password do not fit together. Check both; capital letters count in the password.',
  tooMany: 'Too many attempts. Wait a minute, then try again.',
  demo: 'Trying it out? The demo accounts are printed where the server was started.',
};

/** Words of the demonstration's mail. */
export const caughtMailWords = {
  title: 'Caught mail',
  sentence:
    'The demonstration sends nothing: what would have gone to patients and colleagues stands here, the newest on top.',
  loading: 'the mail',
  none: 'Nothing was sent yet. Confirm visits of a patient who agreed to reminders by mail, and the itinerary appears here within seconds.',
  to: (address: string) => `to ${address}`,
  calendar: 'The calendar entry in it',
};

/** Words of the search page. */
export const findWords = {
  title: 'Find',
  start:
    'Type a name, a case number such as 27-0147, a birth date such as 4 Mar 1949 or 04/03/1949 (day first), or a day such as 5 Jan.',
  results: (q: string) => `What fits “${q}”`,
  goToDay: (day: string) => `The day ${day}`,
  patients: 'Patients',
  cases: 'Cases',
  nothing: (q: string) =>
    `Nobody and nothing fits “${q}”. Try the beginning of the family name or the given name, a birth date, or the beginning of the case number.`,
  addPatient: 'Add a new patient',
  openCase: 'Open a case',
  openCaseFor: (name: string) => `Open a case for ${name}`,
  born: 'born',
};
