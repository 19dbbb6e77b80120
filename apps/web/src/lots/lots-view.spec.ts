import type { MaterialLotView } from '@archwright/contracts';
import { casesOf, lotRows, toLot } from './lots-view.js';

const lot = (more: Partial<MaterialLotView>): MaterialLotView => ({
  id: 'l',
  material: 'Denture base resin',
  lot: 'R-204',
  expiresOn: '2028-01-31',
  recordedAt: '2027-01-04T09:00:00Z',
  recordedBy: 'Sam Example',
  labStepId: null,
  step: null,
  arches: ['upper', 'lower'],
  caseId: 'a',
  caseNumber: '27-0001',
  caseState: 'open',
  patientName: 'A. Example',
  phone: null,
  ...more,
});

it('keeps the entries of a case together and counts every case once', () => {
  const rows = lotRows(
    [lot({ id: '1' }), lot({ id: '2', caseId: 'b', caseNumber: '27-0002' }), lot({ id: '3' })],
    'Europe/London',
    '2027-01-05',
  );
  expect(rows.map(({ id }) => id)).toEqual(['1', '3', '2']);
  expect(casesOf(rows)).toBe(2);
});

it('says what it is, until when it is good, and who recorded it when', () => {
  const [dated, undated] = lotRows([lot({}), lot({ expiresOn: null, arches: [] })], 'Europe/London', '2027-01-05');
  expect(dated).toMatchObject({
    what: 'Denture base resin, both arches',
    expires: 'Mon 31 Jan 2028',
    recorded: 'Mon 4 Jan, Sam Example',
  });
  expect(undated).toMatchObject({ what: 'Denture base resin', expires: 'none printed' });
});

describe('a lot as it is typed', () => {
  it('goes without the blanks around it, and without a date where none is printed', () => {
    expect(toLot({ material: ' Resin ', lot: ' R-204 ', expiresOn: '' }).body).toEqual({
      material: 'Resin',
      lot: 'R-204',
      expiresOn: null,
    });
  });

  it('needs the material and its lot', () => {
    const { body, wrong } = toLot({ material: ' ', lot: '', expiresOn: '2028-01-31' });
    expect([body, Object.keys(wrong)]).toEqual([null, ['material', 'lot']]);
  });
});
