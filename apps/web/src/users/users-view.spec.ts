import type { PracticeView, UserView } from '@archwright/contracts';
import { userRows, usersSentence } from './users-view.js';

const practice: PracticeView = {
  today: '2027-01-04',
  clinics: [{ id: 'n', name: 'North', zone: 'Europe/London', chairs: [], clinicians: [] }],
  laboratories: [{ id: 'l', name: 'Lantern', zone: 'Europe/London', workCentres: [] }],
  orderedFrom: [],
  paths: [],
};
const user: UserView = {
  id: 'a',
  version: 1,
  name: 'Ada',
  role: 'manager',
  mail: null,
  signInName: 'ada',
  clinicIds: ['n'],
  laboratoryIds: ['l'],
  practitionerId: null,
  isActive: false,
  lastSeenAt: '2027-01-04T09:30:00Z',
};

it('names where people work, and puts those whose account ended last', () => {
  const rows = userRows(
    [user, { ...user, id: 'b', name: 'Bea', isActive: true, clinicIds: [], laboratoryIds: [], lastSeenAt: null }],
    practice,
  );
  expect(rows).toMatchObject([
    { name: 'Bea', where: 'nowhere', seen: 'not signed in' },
    { name: 'Ada', where: 'North, Lantern', seen: 'Mon 4 Jan, 09:30' },
  ]);
  expect(usersSentence(rows)).toBe('1 person may sign in; 1 account has ended.');
});
