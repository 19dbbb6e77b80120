import { checkPath, shippedPaths, type TreatmentPath } from '@archwright/protocol';
import {
  freshCode,
  ownSpan,
  withArrow,
  withExtra,
  withGate,
  withGateBefore,
  withLag,
  withLagBetween,
  withLoop,
  withLoopAt,
  withMinutes,
  withObjectMadeAt,
  withoutGate,
  withoutLag,
  withoutLoop,
  withoutObject,
  withPhase,
  withStep,
  withTurnaround,
  withVisit,
} from './path-change.js';

const found = shippedPaths.find(({ code }) => code === 'conventional');
if (found === undefined) throw new Error('The conventional path is shipped.');
const path: TreatmentPath = found;
const own = { standing: 'practice', source: 'Set by the practice' };
const stepOf = ({ labPhases }: TreatmentPath, code: string) =>
  labPhases.flatMap(({ steps }) => steps).find((step) => step.code === code);

describe('a change of a part', () => {
  it('leaves all other parts as they are', () => {
    const changed = withVisit('V2', { title: 'First' })(path);
    expect(changed.visits.map(({ title }) => title)).toEqual(
      path.visits.map(({ code, title }) => (code === 'V2' ? 'First' : title)),
    );
    expect({ ...changed, visits: path.visits }).toEqual(path);
    expect(withVisit('none', { title: 'First' })(path)).toEqual(path);
  });

  it('makes a value the practice’s that the practice set, and no title', () => {
    expect(withMinutes('V2', { typical: 80 })(path).visits[1]?.chairMinutes).toMatchObject({ typical: 80, ...own });
    expect(withTurnaround('trays', { rushDays: 2 })(path).labPhases[0]?.turnaround).toMatchObject({
      rushDays: 2,
      ...own,
    });
    expect(
      withExtra('rim-unstable', { visitsMax: 3 })(path).loops.find(({ code }) => code === 'rim-unstable')?.extra,
    ).toMatchObject({
      visitsMax: 3,
      ...own,
    });
    const disinfected = (changed: TreatmentPath) => changed.gates.find(({ code }) => code === 'disinfected-v1');
    expect(disinfected(withGate('disinfected-v1', { title: 'Clean' })(path))?.standing).toBe('published');
    expect(disinfected(withGate('disinfected-v1', { overridable: true })(path))).toMatchObject(own);
    expect(stepOf(withStep('mount', { title: 'Mount' })(path), 'mount')?.standing).toBe('common-practice');
    expect(stepOf(withStep('mount', { workCentre: 'wax' })(path), 'mount')).toMatchObject({
      workCentre: 'wax',
      ...own,
    });
    expect(withPhase('trays', { outward: 'file' })(path).labPhases[0]?.outward).toBe('file');
  });

  it('gives an arrow or a wait limits and takes them away', () => {
    const limit = ownSpan(null, { unit: 'minutes' });
    expect(limit).toEqual({ amount: 1, unit: 'minutes', firmness: 'typical', ...own });
    const waits = withArrow('mount', 0, { max: ownSpan(limit, { amount: 60 }) })(path);
    expect(stepOf(waits, 'mount')?.after).toMatchObject([
      { code: 'V3', lag: 'record-to-mounting', max: { amount: 60 } },
    ]);
    expect(withArrow('none', 0, { max: null })(path)).toBe(path);
    const lag = (changed: TreatmentPath) => changed.lags.find(({ code }) => code === 'rims-to-jaw-relation');
    expect(lag(withLag('rims-to-jaw-relation', { max: null })(path))?.max).toBeNull();
  });
});

describe('a part more or less', () => {
  it('has a code of its own', () => {
    const [first, second] = [
      withGateBefore(path, { kind: 'visit', code: 'V3' }, 'One'),
      withGateBefore(path, { kind: 'visit', code: 'V3' }, 'One'),
    ];
    expect(first).toEqual(second);
    expect(withGateBefore(first.path, { kind: 'visit', code: 'V4' }, 'Two').code).toBe('own-gate-2');
    expect(freshCode([{ code: 'a' }, { code: 'a-2' }], 'a')).toBe('a-3');
  });

  it('leaves the path sound where it asks for nothing that is not there', () => {
    const wait = withLagBetween(path, ['V1', 'V3'], 'Wait');
    expect(checkPath(wait.path)).toEqual([]);
    const thing = withObjectMadeAt(path, 'V2', 'Photograph');
    expect(checkPath(thing.path)).toEqual([]);
    const loop = withLoopAt(path, 'V2', { code: 'reline-does-not-fit', trigger: 'Reline does not fit' });
    expect(checkPath(loop.path)).toEqual([]);
    expect(withoutLag(wait.path, wait.code)).toEqual(path);
    expect(withoutObject(thing.path, thing.code)).toEqual(path);
    expect(withoutLoop(loop.path, loop.code)).toEqual(path);
  });

  it('is no more what others go on with or throw away', () => {
    const without = withoutLoop(path, 'impression-flawed');
    expect(without.loops.find(({ code }) => code === 'impression-flawed-in-visit')?.otherwise).toBeNull();
    expect(checkPath(without)).toEqual([]);
    const lost = withoutObject(path, 'set-up');
    expect(lost.loops.flatMap(({ discards }) => discards)).not.toContain('set-up');
    expect(checkPath(lost)).toEqual([]);
    expect(checkPath(withoutObject(path, 'finished-denture')).map(({ fault }) => fault)).toEqual(['object-unknown']);
    expect(withoutGate(path, 'trial-accepted').gates).toHaveLength(path.gates.length - 1);
    expect(
      withLoop('rim-unstable', { otherwise: 'poor-retention' })(path).loops.filter(
        ({ otherwise }) => otherwise === 'poor-retention',
      ),
    ).toHaveLength(1);
  });
});
