import type { PracticeView } from '@archwright/contracts';
import { clinicRows, laboratoryRows, pathRows, waitingSentence } from './practice-view.js';

const thorne = { id: 'thorne', name: 'Dr Thorne-Example', skills: ['complete-dentures', 'oral-surgery'] };
const practice: PracticeView = {
  today: '2027-01-04',
  clinics: [
    {
      id: 'north',
      name: 'North clinic',
      zone: 'Europe/London',
      chairs: [
        { id: 'c1', label: 'Chair 1' },
        { id: 'c2', label: 'Chair 2' },
      ],
      clinicians: [thorne],
    },
    { id: 'east', name: 'East clinic', zone: 'Europe/London', chairs: [], clinicians: [thorne] },
  ],
  laboratories: [
    {
      id: 'lab',
      name: 'Lantern',
      zone: 'Europe/London',
      workCentres: [
        { id: 'w', code: 'wax', name: 'Wax', places: 2 },
        { id: 'm', code: 'milling', name: 'Milling', places: 1 },
      ],
    },
  ],
  orderedFrom: [],
  paths: [{ versionId: 'p', code: 'x', version: 2, title: 'Reline', arches: ['upper', 'lower'], visits: 3 }],
};

it('counts a clinician who works at two clinics once', () => {
  expect(waitingSentence(practice, 0)).toBe(
    'Nothing waits for a person. 2 clinics, 2 chairs, 1 clinician, 1 laboratory and 1 treatment path.',
  );
});

it('does not say that nothing waits before that is known', () => {
  expect(waitingSentence(practice, undefined)).toMatch(/^2 clinics/);
});

it('names skills and places in words', () => {
  expect(clinicRows(practice)[0]).toMatchObject({
    chairs: 'Chair 1, Chair 2',
    clinicians: ['Dr Thorne-Example: complete dentures, oral surgery'],
  });
  expect(laboratoryRows(practice)[0]?.workCentres).toBe('Wax (2 places), Milling (1 place)');
  expect(pathRows(practice)[0]).toMatchObject({ arches: 'both arches', version: 2 });
});
