import type { RemakeAlertView } from '@archwright/contracts';
import { openAlerts } from './open-alerts.js';

const alert = (more: Partial<RemakeAlertView>) =>
  ({ id: 'a', state: 'open', decideBy: null, ...more }) as RemakeAlertView;

it('leaves decided alerts away and puts the one to be decided first on top, those without a time last', () => {
  const rows = openAlerts(
    [
      alert({ id: 'any time' }),
      alert({ id: 'decided', state: 'accepted', decideBy: '2027-01-04T09:00:00Z' }),
      alert({ id: 'later', decideBy: '2027-01-06T09:00:00Z' }),
      alert({ id: 'first', state: 'planned', decideBy: '2027-01-05T09:00:00Z' }),
    ],
    'Europe/London',
    '2027-01-04',
  );
  expect(rows.map(({ id }) => id)).toEqual(['first', 'later', 'any time']);
  expect(rows[0]?.deadline).toContain('Tue 5 Jan, 09:00');
});
