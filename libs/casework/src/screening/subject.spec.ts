import { subjectKey } from './subject.js';

describe('what values may be compared', () => {
  it('is the same whatever the order in which the method was stated', () => {
    const place = { code: 'rim-height', arch: null, side: null, region: 'lower' };
    const one = subjectKey({ ...place, method: { posture: 'reclined', landmarks: 'nose-tip-chin' } });
    expect(one).toBe('rim-height/lower/landmarks=nose-tip-chin/posture=reclined');
    expect(subjectKey({ ...place, method: { landmarks: 'nose-tip-chin', posture: 'reclined' } })).toBe(one);
    expect(subjectKey({ ...place, method: null })).not.toBe(one);
  });
});
