import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { jest } from '@jest/globals';
import { TooFewValuesError } from '@archwright/screening';
import { UsageError } from '../arguments.js';
import { AGREEMENT_METHODS } from './agreement-methods.js';
import { OUTLIER_METHODS } from './outlier-methods.js';
import { screenCommand } from './screen-command.js';
import { SERIES_METHODS } from './series-methods.js';

const folder = mkdtempSync(join(tmpdir(), 'screen-'));
const file = join(folder, 'values.csv');
// Eighteen readings of two readers, in tenths of a millimetre; reader B errs in the last one.
const rows = Array.from({ length: 18 }, (_, at) => {
  const value = 62 + ((at * 7) % 11) / 10;
  return `${String(value)},${String(at === 17 ? 71 : value + ((at * 5) % 3) / 10)},${at % 3 === 0 ? 'north' : 'south'}`;
});
writeFileSync(file, `a,b,clinic\n${rows.join('\n')}\n`);
afterAll(() => {
  rmSync(folder, { recursive: true });
});

async function answer(...args: string[]): Promise<Record<string, unknown>> {
  const written: string[] = [];
  const write = jest.spyOn(process.stdout, 'write').mockImplementation((text) => {
    written.push(String(text));
    return true;
  });
  try {
    expect(await screenCommand([...args, '--json'])).toBe(0);
  } finally {
    write.mockRestore();
  }
  return JSON.parse(written.join('')) as Record<string, unknown>;
}

const OPTIONS: Readonly<Record<string, readonly string[]>> = {
  ewma: ['--target', '62.5', '--sigma', '0.4'],
  cusum: ['--target', '62.5', '--sigma', '0.4', '--k', '0.2', '--h', '2'],
  multirule: ['--target', '62.5', '--sigma', '0.4'],
  repeatability: ['--column', 'a', '--column', 'clinic'],
  mahalanobis: ['--column', 'a', '--column', 'b'],
  mcd: ['--column', 'a', '--column', 'b'],
  icc: ['--column', 'a', '--column', 'b'],
};
/** Keys that say `null` for this file, as their help says. */
const NULLS: Readonly<Record<string, readonly string[]>> = {
  multirule: ['firstRejectionRow'],
  'theil-sen': ['interval', 'p'],
};
const METHODS = { ...OUTLIER_METHODS, ...SERIES_METHODS, ...AGREEMENT_METHODS };

describe('cli screen', () => {
  it.each(Object.keys(METHODS))('%s answers with the keys that its help names, and no others', async (name) => {
    const found = await answer(name, file, ...(OPTIONS[name] ?? []));
    expect(Object.keys(found).sort()).toEqual(Object.keys(METHODS[name]?.answers ?? {}).sort());
    // What is no number is said by name, never left as a hole.
    expect(Object.keys(found).filter((key) => found[key] === null)).toEqual(NULLS[name] ?? []);
  });

  it('judges a series by itself where nothing is known of it, and says by what and how often it errs', async () => {
    const own = await answer('individuals-chart', file, '--column', 'b');
    const found = await answer('ewma', file, '--column', 'b');
    expect(found).toMatchObject({ target: own.mean, sigma: own.sigma });
    // A width of 3 at a weight of 0.2 (Lucas & Saccucci 1990: L 2.962 gives 500).
    expect(found.falseAlarmLength).toBeCloseTo(559.9, 0);
    const sums = await answer('cusum', file, '--column', 'b', '--target', '62.5');
    expect(sums).toMatchObject({ target: 62.5, k: 0.5 * Number(own.sigma), h: 5 * Number(own.sigma) });
    // Half a sigma and five sigmas (Brook & Evans 1972): 465.
    expect(sums.falseAlarmLength).toBeCloseTo(465.4, 0);
  });

  it('takes a value below zero for an option, never for another option', async () => {
    expect(await answer('multirule', file, '--column', 'a', '--target', '-62.5')).toMatchObject({
      firstRejectionRow: 1,
    });
  });

  it('finds the planted row by each method that looks for one', async () => {
    for (const name of ['generalized-esd', 'grubbs', 'modified-z']) {
      expect(await answer(name, file, '--column', 'b')).toMatchObject({ outlierRows: [18] });
    }
    expect(await answer('mcd', file, '--column', 'a', '--column', 'b')).toMatchObject({
      outlierRows: expect.arrayContaining([18]) as unknown,
    });
  });

  it('refuses what it does not understand and says what it would', async () => {
    await expect(screenCommand(['guess', file])).rejects.toThrow(UsageError);
    await expect(screenCommand(['multirule', file, '--sigma', '0'])).rejects.toThrow(/sigma 0 is not accepted/);
    await expect(screenCommand(['grubbs', file, '--alpha', 'x'])).rejects.toThrow('--alpha "x" is no number.');
    await expect(screenCommand(['bland-altman', file, '--column', 'a'])).rejects.toThrow('1 columns given, 2 wanted.');
    await expect(screenCommand(['grubbs', file, '--column', 'clinic'])).rejects.toThrow(
      /column "clinic" holds "north"/,
    );
    writeFileSync(join(folder, 'short.csv'), 'a\n1\n2\n');
    await expect(screenCommand(['generalized-esd', join(folder, 'short.csv')])).rejects.toThrow(TooFewValuesError);
  });
});
