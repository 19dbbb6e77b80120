import { shippedPaths, type TreatmentPath } from '@archwright/protocol';
import { readPathText, textOf, withNumber, withVisit } from './path-draft.js';
import { drawPath } from './path-picture.js';
import { missingMeans, orderRows } from './paths-view.js';

const found = shippedPaths.find(({ code }) => code === 'conventional');
if (found === undefined) throw new Error('The conventional path is shipped.');
const path: TreatmentPath = found;
const [firstVisit] = path.visits;
const code = firstVisit?.code ?? '';

describe('the text of a path', () => {
  it('is read back as the same path, without a fault', () => {
    expect(readPathText(textOf(path))).toEqual({ path, faults: [], notJson: null });
  });

  it('says what is no JSON, what is no path, and which part of a path has a fault', () => {
    expect(readPathText('{').notJson).not.toBeNull();
    expect(readPathText('{}').faults.map(({ part }) => part)).toContain('visits');
    const twice = { ...path, visits: path.visits.map((visit) => ({ ...visit, isDelivery: true })) };
    expect(readPathText(textOf(twice)).faults).toMatchObject([{ part: 'visits' }]);
  });
});

it('says of a number that the practice changed that it is the practice’s', () => {
  const changed = withNumber({ of: 'visit', code, field: 'typical' }, 42)(path);
  expect(changed.visits[0]?.chairMinutes).toMatchObject({
    typical: 42,
    standing: 'practice',
    source: 'Set by the practice',
  });
  expect(changed.visits.slice(1)).toEqual(path.visits.slice(1));
  const [lag] = path.lags.filter(({ max }) => max !== null);
  const waited = withNumber({ of: 'lag', code: lag?.code ?? '', field: 'max' }, 9)(path);
  expect(waited.lags.find((each) => each.code === lag?.code)?.max).toMatchObject({ amount: 9, standing: 'practice' });
  const [phase] = path.labPhases;
  const rushed = withNumber({ of: 'phase', code: phase?.code ?? '', field: 'rushDays' }, 1)(path);
  expect(rushed.labPhases[0]?.turnaround.rushDays).toBe(1);
  expect(withVisit(code, { title: 'First' })(path).visits[0]?.title).toBe('First');
});

it('draws every visit and every step of the table, left to right', () => {
  const { visits, bars, width } = drawPath(path);
  const rows = orderRows(path);
  expect([...visits, ...bars].map((part) => part.code).sort()).toEqual(rows.map(({ part }) => part).sort());
  expect(visits.map(({ x }) => x)).toEqual([...visits].map(({ x }) => x).sort((one, other) => one - other));
  expect(bars.every((bar) => bar.x >= 0 && bar.x + bar.width <= width && bar.width > 0)).toBe(true);
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
