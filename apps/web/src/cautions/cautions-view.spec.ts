import type { CautionView } from '@archwright/contracts';
import { cautionRows, emptyCaution, readCaution } from './cautions-view.js';

describe('a caution that is typed in', () => {
  it.each([
    [{}, 'kind', 'Choose what it is.'],
    [{ kind: 'material-allergy' }, 'material', 'Choose the material.'],
    [{ kind: 'material-allergy', material: 'another' }, 'note', 'Say in up to 500 characters what to mind.'],
    [{ kind: 'other', note: '  ' }, 'note', 'Say in up to 500 characters what to mind.'],
  ])('of %j says at its field what is missing', (typed, field, words) => {
    expect(readCaution({ ...emptyCaution, ...typed })).toEqual({ errors: { [field]: words } });
  });

  it.each([
    [
      { kind: 'material-allergy', material: 'nickel', note: ' ' },
      { kind: 'material-allergy', material: 'nickel', note: null },
    ],
    [
      { kind: 'bleeding', material: 'nickel', note: 'Takes tablets.' },
      { kind: 'bleeding', note: 'Takes tablets.' },
    ],
  ])('of %j is sent without what does not belong to it', (typed, body) => {
    expect(readCaution({ ...emptyCaution, ...typed })).toEqual({ body });
  });
});

it('says of each who recorded it when, and of one that ended why', () => {
  const caution: CautionView = {
    id: 'a',
    version: 1,
    patientId: 'p',
    kind: 'bleeding',
    material: null,
    note: null,
    text: 'This patient bleeds longer.',
    recordedAt: '2027-01-04T23:30:00Z',
    recordedBy: 'Dr Example',
    endedAt: '2027-02-01T09:00:00Z',
    endReason: 'Medicine changed.',
  };
  expect(cautionRows([caution], 'Europe/Berlin', '2027-02-02')).toMatchObject([
    { recorded: 'Recorded by Dr Example, Tue 5 Jan', ended: 'Ended Mon 1 Feb: Medicine changed.' },
  ]);
});
