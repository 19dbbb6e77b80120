import fc from 'fast-check';
import { ImplausibleValueError, InvalidValueError } from '../errors.js';
import { classByMandibularHeight, edentulousClass, gradeLabel } from './edentulous-index.js';
import { kapurScore } from './kapur.js';
import { changeOfImpact, checkDomainValue, impactForm, scoreImpact } from './oral-health-impact.js';

const all = (answer: number | null, items = 19): (number | null)[] => new Array<number | null>(items).fill(answer);

describe('edentulous diagnostic index', () => {
  // McGarry, J Prosthodont 1999;8:27.
  it.each([
    [21, 1],
    [20, 2],
    [16, 2],
    [15, 3],
    [11, 3],
    [10, 4],
  ])('classes a height of %p mm as %p', (height, expected) => {
    expect(classByMandibularHeight(height)).toEqual({ class: expected, roundedMm: height, note: null });
  });

  it('rounds between the published whole millimetres and says so', () => {
    expect(classByMandibularHeight(20.5)).toMatchObject({ class: 1, roundedMm: 21 });
    expect(classByMandibularHeight(20.4)).toMatchObject({ class: 2, note: expect.stringContaining('20.4') as string });
  });

  it('takes the worst criterion and refuses an impossible height', () => {
    expect(edentulousClass([1, 3, 2])).toBe(3);
    expect(() => classByMandibularHeight(2100)).toThrow(ImplausibleValueError);
  });
});

describe('ridge and mucosa classes', () => {
  // Cawood & Howell 1988, Atwood 1963, Newton 1962: from memory.
  it('names the classes and refuses others', () => {
    expect(gradeLabel('cawood-howell-class', 4)).toBe('IV knife-edge');
    expect(gradeLabel('atwood-order', 6)).toBe('6 depressed');
    expect(gradeLabel('newton-stomatitis', 3)).toBe('III papillary or granular');
    expect(() => gradeLabel('newton-stomatitis', 4)).toThrow(InvalidValueError);
  });
});

describe('retention and stability', () => {
  // Kapur 1967 with the Olshan cut-off (> 6), from memory.
  it('sums 2+2 above and 1+1 below to 6, which is not above 6', () => {
    const grades = { upper: { retention: 2, stability: 2 }, lower: { retention: 1, stability: 1 } };
    expect(kapurScore('kapur-olshan', grades)).toEqual({
      variant: 'kapur-olshan',
      upper: 4,
      lower: 2,
      total: 6,
      isAcceptable: false,
    });
    expect(kapurScore('kapur-1967', grades).isAcceptable).toBeNull();
  });

  it('accepts 7 and refuses grades and variants that it cannot sum', () => {
    const good = { retention: 3, stability: 2 };
    expect(kapurScore('kapur-olshan', { upper: good, lower: { retention: 1, stability: 1 } }).isAcceptable).toBe(true);
    expect(() => kapurScore('kapur-1967', { upper: good, lower: { retention: 1, stability: 3 } })).toThrow('0 to 2');
    expect(() => kapurScore('modified', { upper: good, lower: good })).toThrow('no sum');
  });
});

describe('oral health impact', () => {
  // Allen & Locker 2002, 19 items 0 to 4, from memory; sums are exact.
  it.each([
    [0, 0],
    [4, 76],
    [2, 38],
  ])('scores all %p as %p', (answer, total) => {
    expect(scoreImpact('ohip-edent-19', all(answer)).total).toBe(total);
  });

  it('has domains of at most 12, 16, 8, 12, 8, 12 and 8 points, 76 in all', () => {
    const { domains } = scoreImpact('ohip-edent-19', all(4));
    expect(domains.map((domain) => domain.score)).toEqual([12, 16, 8, 12, 8, 12, 8]);
    expect(domains.map((domain) => domain.max)).toEqual([12, 16, 8, 12, 8, 12, 8]);
  });

  // PMC4459116: 20 items, maximum 120.
  it('scores the 20-item form from 20 to 120', () => {
    expect(scoreImpact('ohip-edent-20', all(1, 20)).total).toBe(20);
    expect(scoreImpact('ohip-edent-20', all(6, 20)).total).toBe(120);
    expect(() => scoreImpact('ohip-edent-20', all(0, 20))).toThrow('1 to 6');
  });

  it('fills up to two missing answers with the mean of the same domain', () => {
    const answers = [4, 2, null, ...all(0, 16)];
    const score = scoreImpact('ohip-edent-19', answers);
    expect(score).toMatchObject({ total: 9, filledItems: [3] });
    expect(() => scoreImpact('ohip-edent-19', [null, null, null, ...all(1, 16)])).toThrow('not scored');
    const emptyDomain = all(1).map((answer, index) => (index === 7 || index === 8 ? null : answer));
    expect(() => scoreImpact('ohip-edent-19', emptyDomain)).toThrow('psychological-discomfort');
  });

  // PMC6994890 reports a functional-limitation mean of 15.62, impossible for three items of 0 to 4.
  it('refuses a domain value that the form cannot give', () => {
    expect(() => checkDomainValue('ohip-edent-19', 'functional-limitation', 15.62)).toThrow('0 to 12');
    expect(() => checkDomainValue('ohip-edent-19', 'functional-limitation', Number.NaN)).toThrow('impossible');
    expect(checkDomainValue('ohip-edent-19', 'functional-limitation', 12)).toBe(12);
  });

  it('never compares different forms', () => {
    const before = scoreImpact('ohip-edent-19', all(3));
    expect(changeOfImpact(before, scoreImpact('ohip-edent-19', all(1)))).toBe(-38);
    expect(() => changeOfImpact(before, scoreImpact('ohip-edent-19-three-point', all(1)))).toThrow('never compared');
    expect(() => impactForm('ohip-14')).toThrow('ohip-edent-19');
  });

  it('sums the domains to the total, whatever the answers', () => {
    const answers = fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 19, maxLength: 19 });
    fc.assert(
      fc.property(answers, (given) => {
        const score = scoreImpact('ohip-edent-19', given);
        expect(score.total).toBe(given.reduce((sum, answer) => sum + answer, 0));
        expect(score.domains.reduce((sum, domain) => sum + domain.score, 0)).toBe(score.total);
      }),
      { seed: 20260105 },
    );
  });

  it('refuses a wrong number of items and an answer between the steps', () => {
    expect(() => scoreImpact('ohip-edent-19', all(1, 20))).toThrow('19 items, 20 were given');
    expect(() => scoreImpact('ohip-edent-19', [0.5, ...all(1, 18)])).toThrow('Item 1');
  });
});
