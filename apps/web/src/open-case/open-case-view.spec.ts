import type { PracticeView } from '@archwright/contracts';
import {
  caseDraftKey,
  chooseClinics,
  choosePath,
  cliniciansOf,
  emptyCase,
  pathsFor,
  parentChoices,
  readCase,
} from './open-case-view.js';

const uuid = (n: number): string => `019b0000-0000-7000-8000-${String(n).padStart(12, '0')}`;
const practice: PracticeView = {
  today: '2027-01-05',
  clinics: [
    {
      id: uuid(1),
      name: 'North',
      zone: 'Europe/London',
      chairs: [],
      clinicians: [{ id: uuid(11), name: 'Wren', skills: [] }],
    },
    {
      id: uuid(2),
      name: 'East',
      zone: 'Europe/London',
      chairs: [],
      clinicians: [
        { id: uuid(11), name: 'Wren', skills: [] },
        { id: uuid(12), name: 'Finch', skills: [] },
      ],
    },
  ],
  laboratories: [],
  orderedFrom: [],
  paths: [
    { versionId: uuid(21), code: 'digital', version: 1, title: 'Digital', arches: ['upper', 'lower'], visits: 4 },
    { versionId: uuid(22), code: 'digital', version: 2, title: 'Digital', arches: ['upper', 'lower'], visits: 4 },
    { versionId: uuid(23), code: 'overdenture', version: 1, title: 'Overdenture', arches: ['lower'], visits: 6 },
  ],
};

it('offers for each arch only paths made for it, the newest version first', () => {
  expect(pathsFor(practice, 'upper').map((path) => path.value)).toEqual([uuid(22), uuid(21)]);
  expect(pathsFor(practice, 'lower').map((path) => path.value)).toEqual([uuid(22), uuid(21), uuid(23)]);
});

it('names each clinician of the chosen clinics once', () => {
  expect(cliniciansOf(practice, [uuid(1), uuid(2)]).map((one) => one.label)).toEqual(['Finch', 'Wren']);
  expect(cliniciansOf(practice, [uuid(1)]).map((one) => one.label)).toEqual(['Wren']);
});

it('says what is missing, all at once', () => {
  const read = readCase(practice, { ...emptyCase(practice, false), patientId: null, clinicIds: [] });
  expect(Object.keys('errors' in read ? read.errors : {})).toEqual(['patientId', 'arches', 'clinicIds']);
});

it('means no clinician any more who works in none of the chosen clinics', () => {
  const typed = { ...emptyCase(practice, false), clinicianId: uuid(12) };
  expect(chooseClinics(practice, typed, [uuid(2)])).toEqual({ ...typed, clinicIds: [uuid(2)] });
  expect(chooseClinics(practice, typed, [uuid(1)])).toEqual({ ...typed, clinicIds: [uuid(1)], clinicianId: '' });
});

it('keeps what is typed apart by patient, and a case apart from an enquiry', () => {
  const keys = [undefined, 'enquiry'].flatMap((as) => [null, uuid(3), uuid(4)].map((id) => caseDraftKey(as, id)));
  expect(new Set(keys).size).toBe(6);
  expect(caseDraftKey('case', uuid(3))).toBe(caseDraftKey(undefined, uuid(3)));
});

it('leaves wishes to the patient until someone changes them', () => {
  const draft = { ...emptyCase(practice, false), patientId: uuid(3), paths: { upper: uuid(22), lower: '' } };
  const read = readCase(practice, draft);
  expect(read).toEqual({
    body: {
      patientId: uuid(3),
      enquiry: false,
      arches: [{ arch: 'upper', pathVersionId: uuid(22) }],
      clinicIds: [uuid(1), uuid(2)],
      clinicianId: null,
      parentCaseId: null,
      visitPlace: { place: 'clinic' },
    },
  });
});

it('asks for the way to a patient at home, and for nothing of the kind at the clinic', () => {
  const draft = { ...emptyCase(practice, false), patientId: uuid(3), paths: { upper: uuid(22), lower: '' } };
  expect(readCase(practice, { ...draft, place: 'home', travelMinutes: '40' })).toMatchObject({
    body: { visitPlace: { place: 'home', travelMinutes: 40 } },
  });
  for (const travelMinutes of ['', 'far', '999']) {
    const read = readCase(practice, { ...draft, place: 'care-home', travelMinutes });
    expect(Object.keys('errors' in read ? read.errors : {})).toEqual(['visitPlace.travelMinutes']);
    expect(readCase(practice, { ...draft, travelMinutes })).toHaveProperty('body');
  }
});

describe('the path of the lower arch', () => {
  const none = { upper: '', lower: '' };

  it('follows the upper one until it is chosen by itself', () => {
    const both = choosePath(practice, none, 'upper', uuid(22));
    expect(both).toEqual({ upper: uuid(22), lower: uuid(22) });
    const apart = choosePath(practice, both, 'lower', uuid(23));
    expect(choosePath(practice, apart, 'upper', uuid(21))).toEqual({ upper: uuid(21), lower: uuid(23) });
  });

  it('may be left out, and stays out', () => {
    const upperOnly = choosePath(practice, choosePath(practice, none, 'upper', uuid(22)), 'lower', '');
    expect(choosePath(practice, upperOnly, 'upper', uuid(21))).toEqual({ upper: uuid(21), lower: '' });
  });

  it('follows no path that is not made for it', () => {
    const upperAlone = { ...practice, paths: [{ ...practice.paths[0], arches: ['upper'] }] } as PracticeView;
    expect(choosePath(upperAlone, none, 'upper', uuid(21))).toEqual({ upper: uuid(21), lower: '' });
  });
});

it('asks nothing about arches for an enquiry', () => {
  const read = readCase(practice, { ...emptyCase(practice, true), patientId: uuid(3) });
  expect(read).toMatchObject({ body: { enquiry: true, arches: [{ arch: 'upper' }, { arch: 'lower' }] } });
  expect(readCase({ ...practice, paths: [] }, { ...emptyCase(practice, true), patientId: uuid(3) })).toHaveProperty(
    'errors.arches',
  );
});

describe('the case that a repair follows', () => {
  it('is one of the patient’s own that may have placed a denture', () => {
    const cases = [
      { id: uuid(31), number: '26-0012', state: 'closed', title: 'Complete denture' },
      { id: uuid(32), number: '27-0001', state: 'enquiry', title: 'Examination' },
    ];
    expect(parentChoices(cases)).toEqual([{ value: uuid(31), label: '26-0012 · Complete denture' }]);
  });

  it('is sent when one was chosen', () => {
    const draft = { ...emptyCase(practice, false), patientId: uuid(3), paths: { upper: uuid(22), lower: '' } };
    expect(readCase(practice, { ...draft, parentCaseId: uuid(31) })).toMatchObject({
      body: { parentCaseId: uuid(31) },
    });
  });
});
