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
  cusum: ['--target', '62.5', '--k', '0.2', '--h', '2'],
  multirule: ['--target', '62.5', '--sigma', '0.4'],
  repeatability: ['--column', 'a', '--column', 'clinic'],
  mahalanobis: ['--column', 'a', '--column', 'b'],
  mcd: ['--column', 'a', '--column', 'b'],
  icc: ['--column', 'a', '--column', 'b'],
};
const METHODS = { ...OUTLIER_METHODS, ...SERIES_METHODS, ...AGREEMENT_METHODS };

describe('cli screen', () => {
  it.each(Object.keys(METHODS))('%s answers with every key that its help names', async (name) => {
    const found = await answer(name, file, ...(OPTIONS[name] ?? []));
    expect(Object.keys(found)).toEqual(expect.arrayContaining(Object.keys(METHODS[name]?.answers ?? {})));
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
    await expect(screenCommand(['cusum', file])).rejects.toThrow(
      '--target is missing: value that the series should keep.',
    );
    await expect(screenCommand(['grubbs', file, '--alpha', 'x'])).rejects.toThrow('--alpha "x" is no number.');
    await expect(screenCommand(['bland-altman', file, '--column', 'a'])).rejects.toThrow('1 columns given, 2 wanted.');
    await expect(screenCommand(['grubbs', file, '--column', 'clinic'])).rejects.toThrow(
      /column "clinic" holds "north"/,
    );
    writeFileSync(join(folder, 'short.csv'), 'a\n1\n2\n');
    await expect(screenCommand(['generalized-esd', join(folder, 'short.csv')])).rejects.toThrow(TooFewValuesError);
  });
});
