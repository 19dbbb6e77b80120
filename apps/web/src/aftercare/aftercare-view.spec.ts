import type { SoreSpotView } from '@archwright/contracts';
import { regionStates, spotRows } from './aftercare-view.js';

const spot = (more: Partial<SoreSpotView>): SoreSpotView => ({
  id: 's',
  version: 1,
  caseId: 'c',
  arch: 'lower',
  region: 'ridge-left',
  side: 'left',
  foundOn: '2027-01-04',
  foundBy: 'Dr Example',
  pain: 4,
  suspectedCause: 'long-border',
  note: null,
  healedOn: null,
  watch: { state: 'watched', referOn: '2027-01-18', reason: 'Refer on 2027-01-18 if it has not healed.' },
  adjustments: [],
  referral: null,
  ...more,
});
const CALENDAR = { zone: 'Europe/London', today: '2027-01-20' };

it('counts open and healed spots of each region apart, in the arch they are in', () => {
  const spots = [spot({}), spot({ id: 'h', healedOn: '2027-01-10' }), spot({ id: 'u', arch: 'upper' })];
  const lower = regionStates(['lower'], spots);
  expect(lower).toHaveLength(14);
  expect(lower.find(({ region }) => region === 'ridge-left')).toMatchObject({
    open: 1,
    healed: 1,
    name: 'lower ridge left, 1 open sore spot, 1 healed',
  });
  expect(lower.find(({ region }) => region === 'ridge-right')?.name).toBe('lower ridge right');
});

it('marks what has outlasted two weeks, with the decision on its referral and who took it', () => {
  const referral = {
    id: 't',
    version: 2,
    reason: 'Still sore.',
    dueOn: '2027-01-18',
    state: 'declined' as const,
    decidedAt: '2027-01-19T10:00:00Z',
    decidedBy: 'Dr Example',
    decisionNote: 'Already seen there.',
  };
  const watch = { state: 'refer' as const, referOn: '2027-01-18', reason: 'Refer.' };
  expect(spotRows([spot({ watch, referral })], CALENDAR)[0]).toMatchObject({
    place: 'lower ridge left',
    tone: 'stop',
    state: 'refer',
    isOpen: true,
    referral: {
      state: 'not referred',
      isOpen: false,
      decided: 'Dr Example, Tue 19 Jan, 10:00: Already seen there.',
    },
  });
});

it('shows a healed one as healed, with its day', () => {
  const watch = { state: 'healed' as const, referOn: null, reason: 'Healed.' };
  expect(spotRows([spot({ healedOn: '2027-01-10', watch })], CALENDAR)[0]).toMatchObject({
    tone: 'go',
    state: 'healed Sun 10 Jan',
    isOpen: false,
  });
});
