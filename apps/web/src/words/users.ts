import { count } from './plural.js';
import { frameWords } from './frame.js';

/** Words of the screens on which people get their accounts. */
export const userWords = {
  title: 'People and what they may do',
  link: 'People who sign in',
  sentence: (active: number, ended: number) =>
    `${count(active, 'person', 'people')} may sign in` +
    (ended === 0 ? '.' : `; ${count(ended, 'account has', 'accounts have')} ended.`),
  loading: 'the accounts',
  back: 'Everybody',
  columns: { name: 'Name', signIn: 'Sign-in name', role: 'Role', where: 'Where', seen: 'Last seen' },
  add: 'Give a person an account',
  ended: 'ended',
  nowhere: 'nowhere',
  notSignedIn: 'not signed in',
  fields: {
    name: 'Name',
    signInName: 'Sign-in name',
    role: 'Role',
    mail: 'Mail address, if there is one',
    clinicIds: 'Clinics',
    laboratoryIds: 'Laboratories',
    practitionerId: 'Whose calendar',
    password: 'First password',
  },
  roles: frameWords.roles,
  choose: 'Choose',
  passwordHint: 'At least 15 characters. Hand it over in person; whoever gets it sets another one.',
  suggest: 'Suggest one',
  save: 'Save',
  give: 'Give the account',
  given: (signInName: string, password: string) =>
    `${signInName} signs in with the password ${password}. Hand it over now: it is not shown again.`,
  need: {
    name: 'Enter a name of up to 120 characters.',
    signInName: 'Enter 3 to 200 characters without a space, such as a mail address.',
    mail: 'Enter an address such as name@example.org, or leave it empty.',
    practitionerId: 'Choose the clinician whose calendar it is.',
    password: 'Enter at least 15 characters.',
  },
  lessEnds: 'Whoever may do less than before is signed out.',
  end: 'End the account',
  endThen: 'Every session of this person ends now. What they did stays on record.',
  letIn: 'Let this person in again',
  letInThen: 'The person signs in with the password they had.',
  reset: 'Set a new password',
  resetThen: 'Every session of this person ends now.',
  confirm: 'Yes, do it',
  own: {
    title: 'Your password',
    sentence: 'When it is changed, you are signed out everywhere and sign in with the new one.',
    current: 'Present password',
    next: 'New password',
    save: 'Change it',
    currentMissing: 'Enter the password with which you signed in.',
  },
};
