import { shippedPaths, type TreatmentPath } from '@archwright/protocol';
import { drawPath } from './path-picture.js';
import { faultsOf, keptPath } from './path-draft.js';
import { partGroups, partName, partOfKey } from './path-parts.js';
import { withMinutes, withVisit } from './path-change.js';
import { missingMeans, orderRows } from './paths-view.js';

const found = shippedPaths.find(({ code }) => code === 'conventional');
if (found === undefined) throw new Error('The conventional path is shipped.');
const path: TreatmentPath = found;

describe('a draft of a path', () => {
  it.each(shippedPaths)('$code has no fault as it comes', (shipped) => {
    expect(faultsOf(shipped)).toEqual([]);
  });

  it('says at its field what no path may hold', () => {
    expect(faultsOf(withVisit('V2', { title: ' ' })(path))).toEqual([
      { part: { kind: 'visit', code: 'V2' }, field: 'title', words: 'Enter something here, up to 500 characters.' },
    ]);
    expect(faultsOf(withMinutes('V2', { min: 2 })(path))).toEqual([
      { part: { kind: 'visit', code: 'V2' }, field: 'chairMinutes.min', words: 'At least 5.' },
    ]);
    const mount = {
      ...path,
      labPhases: path.labPhases.map((phase) => ({
        ...phase,
        steps: phase.steps.map((step) => ({ ...step, segments: [] })),
      })),
    };
    expect(faultsOf(mount)).toContainEqual({
      part: { kind: 'step', code: 'mount' },
      field: 'segments',
      words: 'Choose or add at least one.',
    });
    expect(faultsOf({ ...path, code: 'Our Own' })).toContainEqual({
      part: { kind: 'path', code: '' },
      field: 'code',
      words: 'Lower-case words joined by hyphens, such as final-impression.',
    });
  });

  it('says at its field what parts of a path refuse of each other', () => {
    expect(
      faultsOf(withVisit('V2', { captures: [] })(path)).map(({ part, field }) => [part.code, field]),
    ).toContainEqual(['impression-passed', 'requires.0']);
    expect(faultsOf(withMinutes('V2', { typical: 500 })(path))).toEqual([
      {
        part: { kind: 'visit', code: 'V2' },
        field: 'chairMinutes',
        words: 'The minutes 60, 500 and 120 do not rise.',
      },
    ]);
  });

  it('goes on with what was kept, half typed as well, and leaves what is no path', () => {
    const half = withVisit('V2', { title: '' })(path);
    expect(keptPath(JSON.parse(JSON.stringify(half)))).toEqual(half);
    expect(keptPath(JSON.stringify(path))).toBeNull();
    expect(keptPath({ ...path, visits: undefined })).toBeNull();
  });
});

describe('the parts of a path', () => {
  it('are all to choose, under names', () => {
    const groups = new Map(partGroups(path).map(({ kind, parts }) => [kind, parts.length]));
    expect(groups.get('visit')).toBe(path.visits.length);
    expect(groups.get('gate')).toBe(path.gates.length);
    expect(groups.get('loop')).toBe(path.loops.length);
    expect(partName(path, { kind: 'phase', code: 'trays' })).toBe('V1 to V2');
    expect(partName(path, { kind: 'visit', code: 'V2' })).toBe('V2 · Border molding and final impressions');
    expect(partOfKey('loop/rim-unstable')).toEqual({ kind: 'loop', code: 'rim-unstable' });
    expect(partOfKey('nothing')).toEqual({ kind: 'path', code: '' });
  });
});

describe('the drawing of a path', () => {
  it.each(shippedPaths)('$code shows every part once, none on another, within its bounds', (shipped) => {
    const { visits, steps, phases, waits, loops, width, height, box } = drawPath(shipped);
    const rows = orderRows(shipped);
    expect([...visits, ...steps].map((part) => part.code).sort()).toEqual(rows.map(({ part }) => part).sort());
    expect(waits.map(({ code }) => code).sort()).toEqual(shipped.lags.map(({ code }) => code).sort());
    expect(loops.map(({ code }) => code).sort()).toEqual(shipped.loops.map(({ code }) => code).sort());
    expect(visits.map(({ x }) => x)).toEqual([...visits].map(({ x }) => x).sort((one, other) => one - other));
    const boxes = [...steps, ...phases, ...loops, ...waits];
    boxes.forEach((one, index) => {
      expect(one.y).toBeGreaterThan(0);
      expect(one.y).toBeLessThan(height);
      expect(one.x).toBeLessThan(width);
      const over = boxes
        .slice(index + 1)
        .filter((other) => Math.abs(one.x - other.x) < box && Math.abs(one.y - other.y) < 44);
      expect(over).toEqual([]);
    });
  });
});

it('names what the practice does not have', () => {
  const skills = path.visits.flatMap((visit) => visit.skills);
  const kits = path.visits.flatMap((visit) => visit.kits);
  const workCentres = path.labPhases.flatMap(({ steps }) => steps.map(({ workCentre }) => workCentre));
  expect(missingMeans(path, { skills, kits, workCentres })).toEqual([]);
  expect(missingMeans(path, { skills: [], kits, workCentres })).toEqual(
    [...new Set(skills)].map((skill) => `Nobody in use has the skill "${skill}".`),
  );
});
