import { emptyPatient, readPatient, draftOfPatient, type PatientDraft } from './patient-form-view.js';

const draft = (more: Partial<PatientDraft>): PatientDraft => ({
  ...emptyPatient('Europe/London'),
  givenName: 'Ada',
  familyName: 'Example',
  birthOn: '1949-03-04',
  ...more,
});

it('needs only name, birth date and zone', () => {
  const read = readPatient(draft({}));
  expect(read).toMatchObject({ body: { mail: null, phone: null, chairMinutesPerDay: null, reminderConsent: [] } });
});

it.each([
  [{ birthOn: '' }, 'birthOn'],
  [{ givenName: '  ' }, 'givenName'],
  [{ mail: 'nobody' }, 'mail'],
  [{ phone: 'call me' }, 'phone'],
  [{ chairMinutesPerDay: '5' }, 'chairMinutesPerDay'],
  [{ travelMinutes: 'far' }, 'travelMinutes'],
])('says beside the field what is accepted instead of %j', (wrong, path) => {
  const read = readPatient(draft(wrong));
  expect(Object.keys('errors' in read ? read.errors : {})).toEqual([path]);
  expect(Object.values('errors' in read ? read.errors : {})[0]).toMatch(/^(Enter|Use|Choose)/);
});

it('gives back from the form what the server sent', () => {
  const read = readPatient(
    draft({ remindByMail: true, phone: '+44 20 7946 0000', chairMinutesPerDay: '90', address: '1 Example Road' }),
  );
  if (!('body' in read)) throw new Error('the draft should be complete');
  expect(readPatient(draftOfPatient({ id: 'x', version: 1, ...read.body }))).toEqual(read);
});
