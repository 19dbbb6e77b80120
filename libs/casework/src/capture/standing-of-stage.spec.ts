import { combineArches, shippedPaths, type GateEvidence } from '@archwright/protocol';
import { inEnglish } from '../tell.js';
import { stageGates } from './stage-gates.js';
import { standingOf as standing, type StageFacts } from './standing-of-stage.js';

const standingOf = (known: StageFacts): { verdict: string; reason: string } => {
  const { verdict, reason } = standing(known);
  return { verdict, reason: inEnglish(reason) };
};

const digital = shippedPaths.find(({ code }) => code === 'digital-printed-bases');
if (digital === undefined) throw new Error('The digital path is not shipped.');
const chain = combineArches({ upper: digital, lower: digital });

const nothing: GateEvidence = {
  captures: [],
  checklist: [],
  failedChecks: [],
  passedStages: [],
  caseRecords: ['consent', 'treatment-approval'],
  disinfectedStages: [],
  objectsInClinic: [],
  overriddenGates: [],
};
const facts = (given: Partial<StageFacts> = {}): StageFacts => ({
  state: 'in-progress',
  checking: false,
  gates: [],
  alert: null,
  lateFinding: null,
  failed: [],
  unfinished: [],
  onItsWay: [],
  here: [],
  ...given,
});

describe('standingOf', () => {
  it('names what the gate of the combined visit still lacks', () => {
    const lacking = standingOf(facts({ gates: stageGates(chain, 'D2', nothing) }));
    expect(lacking.verdict).toBe('check-first');
    expect(lacking.reason).toMatch(/^Missing: Functional impression set and passed before any tracing; .* more\.$/);
  });

  it('leaves the record of disinfection to the hand-over', () => {
    const [gate] = stageGates(chain, 'D3', nothing).filter(({ closesAtHandOver }) => closesAtHandOver);
    expect(gate?.missing).toEqual(['Disinfection recorded: agent and time']);
    expect(standingOf(facts({ gates: gate === undefined ? [] : [gate] })).verdict).toBe('may-go-on');
  });

  it('stops a visit on a failed check although its path has no gate that says so', () => {
    const failedChecks = [{ stage: 'D1', reason: 'The mucosa is inflamed.' }];
    const before = stageGates(chain, 'D1', { ...nothing, failedChecks });
    const open = before.find(({ gate }) => gate.code === 'failed-checks');
    expect(open?.missing).toEqual(['The mucosa is inflamed.']);
    const overridden = stageGates(chain, 'D1', { ...nothing, failedChecks, overriddenGates: ['failed-checks'] });
    expect(overridden.find(({ gate }) => gate.code === 'failed-checks')?.missing).toEqual([]);
  });

  it('puts a decision that waits before everything else', () => {
    const waiting = facts({ alert: 'Three tracings failed.', unfinished: ['Printed base plate'], checking: true });
    expect(standingOf(waiting)).toEqual({ verdict: 'decide', reason: 'Three tracings failed.' });
  });

  it('is not ready while work is missing', () => {
    const unmade = standingOf(facts({ state: 'planned', unfinished: ['Finish and polish'] }));
    expect(unmade).toEqual({ verdict: 'not-ready', reason: 'Not made yet: Finish and polish.' });
    const underWay = standingOf(facts({ state: 'planned', onItsWay: ['Finished denture'] }));
    expect(underWay).toEqual({ verdict: 'not-ready', reason: 'On its way: Finished denture.' });
  });

  it('asks before a visit only for what the visit itself does not bring', () => {
    const gates = stageGates(chain, 'D2', nothing);
    const ready = standingOf(facts({ state: 'planned', gates, here: ['Printed base plate with rim'] }));
    expect(ready).toEqual({ verdict: 'may-go-on', reason: 'Ready to begin. Here: Printed base plate with rim.' });
    const unasked = stageGates(chain, 'D2', { ...nothing, caseRecords: [] });
    const before = standingOf(facts({ state: 'planned', gates: unasked }));
    expect(before.verdict).toBe('check-first');
    expect(before.reason).toMatch(/consent/i);
  });
});
