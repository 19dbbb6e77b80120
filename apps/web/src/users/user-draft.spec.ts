import { emptyUser, readNewUser, readUser, suggestedPassword } from './user-draft.js';

const CLINICIAN = '00000000-0000-4000-8000-000000000001';
const typed = { ...emptyUser, name: 'Nia', signInName: 'nia', password: 'a-password-that-is-long' };

it('says at each field what is still missing', () => {
  const { errors } = readNewUser({ ...emptyUser, mail: 'nowhere' }) as { errors: Record<string, string> };
  expect(Object.keys(errors).sort()).toEqual(['mail', 'name', 'password', 'signInName']);
  expect(errors.password).toBe('Enter at least 15 characters.');
});

it('asks a clinician for a calendar, and takes none from anybody else', () => {
  expect(readNewUser({ ...typed, role: 'clinician' })).toEqual({
    errors: { practitionerId: 'Choose the clinician whose calendar it is.' },
  });
  expect(readUser({ ...typed, role: 'clinician', practitionerId: CLINICIAN })).toMatchObject({
    body: { practitionerId: CLINICIAN },
  });
  expect(readUser({ ...typed, role: 'lab', practitionerId: CLINICIAN })).toMatchObject({
    body: { practitionerId: null },
  });
});

it('suggests a password that an account takes', () => {
  let next = 0;
  const password = suggestedPassword((below) => next++ % below);
  expect(password).toBe('abcd-efgh-jkmn-pqrs-tuvw');
  expect(readNewUser({ ...typed, password })).toHaveProperty('body');
});
