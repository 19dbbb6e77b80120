import { changeOfCaseState, nextCaseStates } from './case-state.js';
import { changeStageState } from './stage-state.js';

describe('case states', () => {
  it('stops everything at once when the patient has died', () => {
    expect(changeOfCaseState('open', 'ended-by-death')).toMatchObject({
      bookings: 'release-future',
      labWork: 'stop-all',
      notices: 'stop-silently',
    });
    expect(nextCaseStates('ended-by-death')).toEqual([]);
  });

  it('asks for mucosa, medicines, consent and ages again when a case resumes, not when it opens', () => {
    expect(changeOfCaseState('paused', 'open').recheck).toEqual([
      'mucosa',
      'medicines',
      'consent',
      'age-of-impressions',
      'age-of-bases',
    ]);
    expect(changeOfCaseState('enquiry', 'open').recheck).toEqual([]);
  });

  it('refuses what cannot follow, naming what can', () => {
    expect(() => changeOfCaseState('closed', 'open')).toThrow(/Allowed from there: ended-by-death/);
    expect(() => changeStageState('repeated', 'passed')).toThrow(/nothing, it is final/);
    expect(changeStageState('in-progress', 'passed')).toBe('passed');
  });
});
