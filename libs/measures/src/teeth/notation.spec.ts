import { ToothCodeError } from '../errors.js';
import { PERMANENT_TEETH, areaOfArches, fromUniversal, isTooth, toUniversal } from './notation.js';

describe('ISO 3950 and Universal notation', () => {
  // Universal numbering from memory; 10 and 11 confirmed by the HL7 v3 ActSite vocabulary (maxillary left lateral, canine).
  it.each([
    ['18', '1'],
    ['11', '8'],
    ['21', '9'],
    ['28', '16'],
    ['38', '17'],
    ['31', '24'],
    ['41', '25'],
    ['48', '32'],
    ['22', '10'],
    ['23', '11'],
    ['55', 'A'],
    ['51', 'E'],
    ['61', 'F'],
    ['65', 'J'],
    ['75', 'K'],
    ['85', 'T'],
  ])('reads %s as %s and back', (iso, universal) => {
    expect(toUniversal(iso)).toBe(universal);
    expect(fromUniversal(universal)).toBe(iso);
  });

  it.each(['19', '29', '50', '86', '56', '10', '1', '', '111', '1a'])('refuses %p as a tooth', (code) => {
    expect(isTooth(code)).toBe(false);
    expect(() => toUniversal(code)).toThrow(ToothCodeError);
  });

  it.each(['0', '33', 'U', '-1', '1.5', ''])('refuses %p as a Universal number', (code) => {
    expect(() => fromUniversal(code)).toThrow(ToothCodeError);
  });

  // HL7 FHIR example value set of teeth: 32 permanent codes, 11 to 48.
  it('has 32 permanent teeth from 11 to 48, each with a Universal number of its own', () => {
    expect(PERMANENT_TEETH).toHaveLength(32);
    expect([PERMANENT_TEETH[0], PERMANENT_TEETH.at(-1)]).toEqual(['11', '48']);
    const numbers = PERMANENT_TEETH.map((tooth) => Number(toUniversal(tooth))).sort((a, b) => a - b);
    expect(numbers).toEqual(Array.from({ length: 32 }, (_, index) => index + 1));
  });

  // ISO 3950 area codes, from memory of the standard.
  it('names the area of complete dentures', () => {
    expect([areaOfArches(['upper']), areaOfArches(['lower']), areaOfArches(['lower', 'upper'])]).toEqual([
      '01',
      '02',
      '00',
    ]);
    expect(() => areaOfArches([])).toThrow('at least one arch');
  });
});
