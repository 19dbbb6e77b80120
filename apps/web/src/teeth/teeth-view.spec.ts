import type { RecordCapture } from '@archwright/contracts';
import { aStage } from '../stage/stage.builder.js';
import { readTeeth, type TeethDraft } from './teeth-draft.js';
import { teethOf } from './teeth-view.js';

const nothing: RecordCapture = { readings: [], tracings: [], checklist: {}, otherCentricRelation: [] };
const interalar = { code: 'interalar-width', value: 36, unit: 'mm' };
const old = { target: 'central-incisor-width', object: 'old-denture', valueMm: 8.4 } as const;

it('suggests nothing without a width of the face, and shows measured teeth all the same', () => {
  const { targets, rows, note } = teethOf(aStage({}), nothing, [old]);
  expect(rows).toEqual([]);
  expect(note).toBeNull();
  expect(targets).toMatchObject([{ target: 'central-incisor-width', ranges: [], marks: [{ valueMm: 8.4 }] }]);
});

it('shows every relation as a range with what contradicts it, on a scale that holds them all', () => {
  const view = aStage({ earlier: [{ ...interalar, at: '2027-01-05T09:00:00Z', stage: 'D1' }] });
  const { targets, rows } = teethOf(view, nothing, []);
  const six = targets.find(({ target }) => target === 'six-anterior-width');
  expect(six?.ranges.length).toBeGreaterThan(1);
  for (const { lowMm, highMm } of six?.ranges ?? []) {
    expect(highMm).toBeGreaterThan(lowMm);
    expect(lowMm).toBeGreaterThanOrEqual(six?.from ?? Infinity);
    expect(highMm).toBeLessThanOrEqual(six?.to ?? -Infinity);
  }
  expect(rows.every(({ cells }) => (cells[3] ?? '').length > 10)).toBe(true);
});

it('goes by what is typed rather than by what an earlier visit measured', () => {
  const view = aStage({ earlier: [{ ...interalar, at: '2027-01-05T09:00:00Z', stage: 'D1' }] });
  const { rows } = teethOf(view, { ...nothing, readings: [{ ...interalar, value: 40 }] }, []);
  expect(rows[0]?.cells[2]).toBe('Interalar width 40.0 mm');
});

describe('a draft', () => {
  const draft: TeethDraft = {
    wish: ' like on the wedding picture ',
    arrangement: '',
    shade: 'A2',
    mould: '',
    decidedBy: '',
    measured: [{ target: 'central-incisor-width', object: 'photograph', text: '8,5' }],
  };

  it('is sent with its widths as numbers, and nobody as who decided', () => {
    expect(readTeeth(draft)).toMatchObject({
      body: {
        wish: 'like on the wedding picture',
        decidedBy: null,
        measured: [{ object: 'photograph', valueMm: 8.5 }],
      },
    });
  });

  it('says at the box that a width is no number', () => {
    const read = readTeeth({ ...draft, measured: [{ target: 'central-incisor-width', object: 'cast', text: 'wide' }] });
    expect(read.errors).toEqual({ 'measured.0.valueMm': 'Enter a number such as 8.5.' });
    expect(read.body).toBeNull();
  });
});
