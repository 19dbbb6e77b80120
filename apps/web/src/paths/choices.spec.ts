import { LOOP_TRIGGERS } from '@archwright/measures';
import { shippedPaths, type GateRequirement, type TreatmentPath } from '@archwright/protocol';
import {
  guardedChoices,
  guardedKey,
  guardedOf,
  requirementChoices,
  requirementKey,
  requirementKinds,
  requirementObject,
  requirementsOf,
} from './gate-choices.js';
import { freeTriggers, otherLoops, remedyOf, returnChoices } from './loop-choices.js';

const found = shippedPaths.find(({ code }) => code === 'conventional');
if (found === undefined) throw new Error('The conventional path is shipped.');
const path: TreatmentPath = found;

describe('what a gate can ask for', () => {
  it.each(shippedPaths)('is all that the gates of $code ask for', (shipped) => {
    for (const requirement of shipped.gates.flatMap(({ requires }) => requires)) {
      expect(requirementsOf(shipped, requirement.kind)).toContainEqual(requirement);
    }
  });

  it('has no kind of which the path has nothing', () => {
    expect(requirementKinds(path)).toContain('equal-counts');
    const uncounted = { ...path, visits: path.visits.map((visit) => ({ ...visit, checklist: [] })) };
    expect(requirementKinds(uncounted)).not.toContain('equal-counts');
    expect(requirementKinds(uncounted)).not.toContain('checklist');
  });

  it('shows what is asked for now even where the path has it no more', () => {
    const lost: GateRequirement = { kind: 'checklist', code: 'gone', at: 'V1' };
    const [first] = requirementChoices(path, lost);
    expect(first).toEqual({ value: requirementKey(lost), label: 'V1 · gone' });
    const known: GateRequirement = { kind: 'checklist', code: 'medicines', at: 'V1' };
    expect(requirementChoices(path, known).map(({ label }) => label)).toEqual(
      expect.arrayContaining(['V1 · Medicines and allergies asked']),
    );
    expect(requirementObject(path, { kind: 'in-the-clinic', object: 'finished-denture' })).toBe('Finished denture');
  });

  it('can stand before any visit, step or prescription', () => {
    const keys = guardedChoices(path).map(({ value }) => value);
    for (const { before } of path.gates) {
      expect(keys).toContain(guardedKey(before));
      expect(guardedOf(guardedKey(before))).toEqual(before);
    }
  });
});

describe('a way back', () => {
  const loop = path.loops.find(({ code }) => code === 'looks-refused');
  if (loop === undefined) throw new Error('Looks can be refused.');

  it('is offered for what checks find and the path has none for', () => {
    const free = freeTriggers(path).map(({ value }) => value);
    expect(free).toContain('reline-does-not-fit');
    expect(free).not.toContain('looks-refused');
    expect(free.length).toBeLessThan(LOOP_TRIGGERS.length);
  });

  it('leads to no later part than where it is found', () => {
    const choices = returnChoices(path, loop).map(({ value }) => value);
    expect(choices).toEqual(expect.arrayContaining(['V1', 'set-up', 'V4']));
    expect(choices).not.toContain('V5');
    expect(otherLoops(path, 'looks-refused').map(({ value }) => value)).not.toContain('looks-refused');
    expect(remedyOf('return', loop)).toEqual({ kind: 'return', to: 'V4' });
    expect(remedyOf('repeat-in-visit', loop)).toEqual({ kind: 'repeat-in-visit', tries: 2, minutesEach: 15 });
    expect(remedyOf('healing', loop)).toEqual({ kind: 'healing' });
  });
});
