import type { RecordCapture } from '@archwright/contracts';
import { clashesOf } from '../drafts/rebase.js';
import type { Judged } from '../stage/finding-view.js';
import { aStage } from '../stage/stage.builder.js';
import { readTeeth, readTeethDraft, teethClashes, type TeethDraft } from './teeth-draft.js';
import { teethOf } from './teeth-view.js';

const typed = (...readings: RecordCapture['readings']): Judged => ({
  body: { readings, tracings: [], checklist: {}, otherCentricRelation: [] },
  entries: [],
});
const interalar = { code: 'interalar-width', value: 36, unit: 'mm' };
const old = { target: 'central-incisor-width', object: 'old-denture', valueMm: 8.4 } as const;

it('suggests nothing without a width of the face, and shows measured teeth all the same', () => {
  const { targets, rows, note } = teethOf(aStage({}), typed(), [old]);
  expect(rows).toEqual([]);
  expect(note).toBeNull();
  expect(targets).toMatchObject([{ target: 'central-incisor-width', ranges: [], marks: [{ valueMm: 8.4 }] }]);
});

it('shows every relation as a range with what contradicts it, on a scale that holds them all', () => {
  const view = aStage({ earlier: [{ ...interalar, at: '2027-01-05T09:00:00Z', stage: 'D1' }] });
  const { targets, rows } = teethOf(view, typed(), []);
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
  const { rows } = teethOf(view, typed({ ...interalar, value: 40 }), []);
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

  it('is taken back from the browser when it can be read', () => {
    expect(readTeethDraft(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
    expect(
      readTeethDraft({ ...draft, measured: [{ target: 'a wisdom tooth', object: 'cast', text: '9' }] }),
    ).toBeNull();
  });

  it('shows both versions of what two people chose at once', () => {
    const mine = { ...draft, shade: 'A3', decidedBy: 'patient', measured: [] };
    const theirs = {
      ...draft,
      shade: 'B1',
      mould: 'long',
      measured: draft.measured.map((each) => ({ ...each, text: '9' })),
    };
    expect(teethClashes(clashesOf({ base: draft, mine }, theirs))).toEqual([
      { key: 'shade', label: 'Shade', mine: 'A3', theirs: 'B1' },
      {
        key: 'measured',
        label: 'Measured teeth',
        mine: '',
        theirs: 'Upper central incisor, earlier photograph: 9 mm',
      },
    ]);
  });

  it('says at the box that a width is no number', () => {
    const read = readTeeth({ ...draft, measured: [{ target: 'central-incisor-width', object: 'cast', text: 'wide' }] });
    expect(read.errors).toEqual({ 'measured.0.valueMm': 'Enter a number such as 8.5.' });
    expect(read.body).toBeNull();
  });
});
