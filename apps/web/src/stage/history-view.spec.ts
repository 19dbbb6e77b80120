import type { VerdictHistory } from '@archwright/contracts';
import { changesOf } from './history-view.js';

const said = (more: Partial<VerdictHistory['items'][number]>): VerdictHistory['items'][number] => ({
  rule: 'sibilant-contact',
  ruleVersion: '1',
  verdict: 'pass',
  reason: 'No contact in sibilants.',
  value: null,
  limit: null,
  source: 'Silverman 1953',
  standing: 'memory',
  action: 'go-on',
  caution: null,
  at: '2027-01-05T09:00:00Z',
  about: ['sibilant-test'],
  arch: null,
  supersededAt: null,
  ...more,
});
const failed = said({ verdict: 'fail', reason: 'Rims touch.', supersededAt: '2027-01-05T09:00:00Z' });

it('tells what changed, the latest first, and leaves out what was always the same', () => {
  const stable = said({ rule: 'base-stability', about: ['base-stability'], arch: 'upper', reason: 'Stable.' });
  expect(changesOf([said({}), stable, failed, { ...stable, at: '2027-01-05T08:00:00Z' }])).toEqual([
    { subject: 'sibilant test', verdicts: [said({}), failed] },
  ]);
});

it('keeps the arches apart', () => {
  const upper = said({ about: ['tray-fit'], arch: 'upper' });
  const lower = said({ about: ['tray-fit'], arch: 'lower', verdict: 'fail', reason: 'Rocks.' });
  expect(changesOf([upper, lower])).toEqual([]);
});
