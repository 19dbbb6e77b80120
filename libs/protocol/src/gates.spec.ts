import { combineArches } from './combine.js';
import { openGates, type GateEvidence } from './gates.js';
import { conventional } from './paths/conventional.js';
import { immediate } from './paths/immediate.js';

const nothing: GateEvidence = {
  captures: [],
  checklist: [],
  failedChecks: [],
  passedStages: [],
  caseRecords: [],
  disinfectedStages: [],
  objectsInClinic: [],
  overriddenGates: [],
};
const chain = combineArches({ upper: conventional, lower: conventional });
const missing = (before: Parameters<typeof openGates>[1], evidence: Partial<GateEvidence>) =>
  Object.fromEntries(
    openGates(chain, before, { ...nothing, ...evidence }).map((each) => [each.gate.code, each.missing]),
  );

describe('gates', () => {
  it('asks consent and approval before the first final impression, not at the end of the first visit', () => {
    const visit = { kind: 'visit', code: 'V2' } as const;
    expect(missing(visit, { caseRecords: ['consent'] })).toEqual({
      'consent-and-approval': ['treatment approval dated'],
    });
    expect(missing(visit, { caseRecords: ['consent', 'treatment-approval'] })).toEqual({});
    expect(missing({ kind: 'visit', code: 'V1' }, {})).toEqual({});
  });

  it('names the arch that lacks a finding and the reason of a failed check', () => {
    const captures = ['border-extension', 'impression-retention', 'tissue-state'].flatMap((code) =>
      (['upper', 'lower'] as const).map((arch) => ({ stage: 'V2', code, arch })),
    );
    const evidence = {
      captures: captures.filter((each) => each.code !== 'tissue-state' || each.arch === 'upper'),
      failedChecks: [{ stage: 'V2', reason: 'Border short, lower right' }],
      disinfectedStages: ['V2'],
    };
    expect(missing({ kind: 'prescription', code: 'V2' }, evidence)).toEqual({
      'impression-passed': ['tissue state recorded (lower)', 'Border short, lower right'],
    });
  });

  it('wants as many parts of the tracing set out as went in', () => {
    const parts = (out: number) => [
      { stage: 'V3', code: 'parts-in', count: 4 },
      { stage: 'V3', code: 'parts-out', count: out },
    ];
    const of = (out: number) =>
      missing({ kind: 'prescription', code: 'V3' }, { checklist: parts(out) })['jaw-relation-complete'];
    expect(of(3)).toContain('parts in equal to parts out');
    expect(of(4)).not.toContain('parts in equal to parts out');
  });

  it('lets a clinician override a gate, but neither disinfection nor the immediate denture missing in the clinic', () => {
    expect(missing({ kind: 'visit', code: 'V5' }, { overriddenGates: ['denture-in-clinic'] })).toEqual({});
    expect(
      missing({ kind: 'prescription', code: 'V4' }, { overriddenGates: ['disinfected-v4', 'trial-accepted'] }),
    ).toEqual({
      'disinfected-v4': ['Disinfection recorded: agent and time'],
    });
    const own = combineArches({ upper: immediate });
    const open = openGates(own, { kind: 'visit', code: 'I5' }, { ...nothing, overriddenGates: ['denture-in-clinic'] });
    expect(open.map((each) => each.gate.code)).toEqual(['denture-in-clinic']);
  });
});
