import type { ScreeningFindingView } from '@archwright/contracts';
import { findingRows } from './findings-view.js';

const aFinding = (more: Partial<ScreeningFindingView>): ScreeningFindingView => ({
  id: 'f',
  version: 1,
  kind: 'value',
  comparedWith: 'clinic',
  groupSize: 30,
  code: 'vertical-dimension-at-rest',
  sentence: 'Vertical dimension at rest 93 mm.',
  evidence: {},
  caseId: 'c',
  caseNumber: '27-0012',
  stageId: 's',
  patientName: 'A. Example',
  clinicName: 'North clinic',
  laboratoryName: null,
  workCentreName: null,
  deviceName: null,
  foundAt: '2027-01-04T09:00:00Z',
  seenAt: null,
  seenBy: null,
  ...more,
});
const rows = (more: Partial<ScreeningFindingView>) => findingRows([aFinding(more)], 'Europe/London', '2027-01-04');
const noCase = { caseId: null, caseNumber: null, stageId: null, patientName: null };

it('names the case and its patient', () => {
  expect(rows({})[0]).toMatchObject({ about: '27-0012 · A. Example', caseId: 'c' });
});

it('names the clinic or laboratory where there is no case', () => {
  expect(rows({ ...noCase, kind: 'drift', comparedWith: 'clinic-series' })[0]?.about).toBe('North clinic');
  const share = { ...noCase, kind: 'share', comparedWith: 'laboratories', clinicName: null } as const;
  expect(rows({ ...share, laboratoryName: 'Lantern' })[0]?.about).toBe('Lantern');
});

it('says that nobody else sees a chart of one’s own readings', () => {
  const own = { ...noCase, kind: 'drift', comparedWith: 'own-series', clinicName: null } as const;
  expect(rows(own)[0]?.small).toContain('shown to you alone');
  expect(rows({})[0]?.small).not.toContain('shown to you alone');
});
