import type { RemakeAlertView } from '@archwright/contracts';
import { alertSentence, proposalRows } from './alert-view.js';
import { isUndecided } from './undecided.js';

type Proposal = RemakeAlertView['proposals'][number];
const ripple = (caseId: string, planHash: string, calls: number): Proposal['ripples'][number] => ({
  id: planHash,
  planHash,
  caseId,
  visits: [],
  labSteps: [],
  calls: Array.from({ length: calls }, () => ({
    patientId: 'p',
    patientName: '',
    phone: null,
    byMail: false,
  })),
  untouchedVisits: 0,
  plan: { visits: [], labSteps: [], transports: [], deliveryOn: null, reasons: [], givesUp: [] },
});
const proposal = (id: string, movedVisits: number, otherCases: number, ripples: Proposal['ripples']): Proposal => ({
  id,
  planHash: `all of ${id}`,
  label: id,
  movedVisits,
  leastMovedVisits: 1,
  otherCases,
  ripples,
});
const alert = (more: Partial<RemakeAlertView>): RemakeAlertView => ({
  id: 'a',
  version: 1,
  caseId: 'own',
  caseNumber: '26-0109',
  patientName: 'C. Example',
  stage: 'D2',
  stageTitle: 'Jaw relation',
  trigger: 'tracing-scatter',
  reason: '',
  returnToStage: 'D2',
  returnToTitle: 'Jaw relation',
  arches: ['upper'],
  discards: [],
  state: 'planned',
  raisedAt: '2027-01-04T09:00:00Z',
  decideBy: '2027-01-05T11:20:00Z',
  zone: 'Europe/London',
  proposals: [],
  noProposalReason: null,
  ...more,
});

it('compares ways by moved visits, then other cases, and counts every call', () => {
  const rows = proposalRows(
    alert({
      proposals: [
        proposal('two', 2, 0, [ripple('own', 'h2', 1)]),
        proposal('one-other', 1, 1, [ripple('other', 'x', 1), ripple('own', 'h1', 2)]),
        proposal('one', 1, 0, [ripple('own', 'h0', 1)]),
      ],
    }),
    '2027-01-05',
  );
  expect(rows.map((row) => [row.id, row.calls])).toEqual([
    ['one', 1],
    ['one-other', 3],
    ['two', 1],
  ]);
});

it("accepts by the proposal's own hash and shows what stays and when the case's denture is placed", () => {
  const own = ripple('own', 'part', 0);
  const other = { ...ripple('other', 'other part', 0), untouchedVisits: 2 };
  const placed = { ...own, untouchedVisits: 3, plan: { ...own.plan, deliveryOn: '2027-01-28' } };
  const [row] = proposalRows(alert({ proposals: [proposal('x', 1, 1, [other, placed])] }), '2027-01-05');
  expect(row).toMatchObject({ planHash: 'all of x', untouched: 5, delivery: 'Thu 28 Jan' });
});

it('says by when to decide, or what was decided', () => {
  expect(alertSentence(alert({}), '2027-01-05')).toBe('Decide before Tue 5 Jan, 11:20.');
  expect(isUndecided(alert({ state: 'dismissed' }))).toBe(false);
  expect(alertSentence(alert({ state: 'dismissed' }), '2027-01-05')).toContain('dismissed');
});
