import { combineArches, shippedPaths } from '@archwright/protocol';
import type { OrganisationSettings } from '@archwright/records';
import { checksAfter, nextRecall, recallRuleWords } from './recall-rule.js';

const conventional = shippedPaths.find(({ code }) => code === 'conventional');
const chain = combineArches(conventional === undefined ? {} : { upper: conventional, lower: conventional });
const settings: OrganisationSettings = {
  reminderLeadMinutes: { mail: [], phone: [] },
  quietHours: { from: '20:00', to: '08:00' },
  phoneHoldMinutes: 15,
  provisionalHoldMinutes: 2880,
};

describe('checks after placement', () => {
  it('are due when the path says so, and those booked with the chain are not among them', () => {
    expect(checksAfter(chain, 'V5', '2027-01-28', settings)).toEqual([
      { stage: 'R3', dueOn: '2027-02-11' },
      { stage: 'R4', dueOn: '2027-03-29' },
      { stage: 'RN', dueOn: '2028-01-28' },
    ]);
    expect(checksAfter(chain, 'V4', '2027-01-28', settings)).toEqual([]);
  });

  it('come again by the rule of the practice, in months that may be shorter', () => {
    const own = { ...settings, recallMonths: 6 };
    expect(nextRecall(chain, 'RN', '2027-08-31', own)).toEqual({ stage: 'RN', dueOn: '2028-02-29' });
    expect(checksAfter(chain, 'V5', '2027-01-28', own).map(({ dueOn }) => dueOn)).toEqual([
      '2027-02-11',
      '2027-03-29',
      '2027-07-28',
    ]);
    expect(nextRecall(chain, 'R3', '2027-08-31', own)).toBeNull();
  });

  it('say who stands behind their dates', () => {
    expect(recallRuleWords(settings)).toContain('common practice, no source');
    expect(recallRuleWords({ ...settings, recallMonths: 6 })).toContain("6 months: this practice's own rule");
  });
});
