import { readFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { jest } from '@jest/globals';
import type { ProjectSearch } from '@archwright/planner';
import { UsageError } from '../arguments.js';
import { readInstance } from './read-instance.js';
import { solveCommand } from './solve-command.js';

const instances = fileURLToPath(new URL('../../../../test/reference/scheduling', import.meta.url));
const published = JSON.parse(readFileSync(join(instances, 'published.json'), 'utf8')) as {
  files: Record<string, { format: string; optimum: number | null }>;
};
const folder = mkdtempSync(join(tmpdir(), 'solve-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});

/** On one thread unless told otherwise: others take their time to start from sources. */
async function run(...args: string[]): Promise<{ code: number; out: string; told: string }> {
  const out: string[] = [];
  const told: string[] = [];
  const spies = [
    jest.spyOn(process.stdout, 'write').mockImplementation((text) => out.push(String(text)) > 0),
    jest.spyOn(process.stderr, 'write').mockImplementation((text) => told.push(String(text)) > 0),
  ];
  try {
    return { code: await solveCommand(['--threads', '1', ...args]), out: out.join(''), told: told.join('') };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}

const answer = async (...args: string[]) =>
  JSON.parse((await run(...args, '--json')).out) as Record<string, unknown> & { lowerBound: number | null };

function fileOf(text: string): string {
  const path = join(folder, 'instance.txt');
  writeFileSync(path, text);
  return path;
}

/** A project of two activities. */
const psplib = ({ jobs = '2', capacities = '4', more = [] as string[] }): string =>
  [
    `jobs (incl. supersource/sink ): ${jobs}`,
    '  - renewable : 1 R',
    '****',
    'PRECEDENCE RELATIONS:',
    'jobnr. #modes #successors successors',
    '1 1 1 2',
    '2 1 0',
    ...more,
    '****',
    'REQUESTS/DURATIONS:',
    'jobnr. mode duration R 1',
    '----',
    '1 1 3 2',
    '2 1 3 2',
    'RESOURCEAVAILABILITIES:',
    'R 1',
    capacities,
    '',
  ].join('\n');

describe('cli solve', () => {
  it.each(Object.entries(published.files))(
    '%s: finds the published optimum, and no bound above it',
    async (name, { format, optimum }) => {
      const found = await answer(join(instances, name), '--epochs', '30');
      expect(found).toMatchObject({ format, makespan: optimum, seed: 1 });
      if (optimum === null) expect(found).toMatchObject({ status: 'infeasible', starts: null, lowerBound: null });
      else {
        expect(found.lowerBound).toBeLessThanOrEqual(optimum);
        expect(found['status']).toBe(found.lowerBound === optimum ? 'optimal' : 'feasible');
      }
    },
  );

  it('answers the same for the same seed and epochs', async () => {
    const once = await answer(join(instances, 'mk01.txt'), '--epochs', '1', '--seed', '5');
    const again = await answer(join(instances, 'mk01.txt'), '--epochs', '1', '--seed', '5');
    expect({ ...again, seconds: 0 }).toEqual({ ...once, seconds: 0 });
  });

  it.each(['la02.txt', 'j3029_6.sm'])('%s: threads change the time and nothing else, streams do', async (name) => {
    const solved = async (threads: string) => {
      const args = ['--epochs', '4', '--streams', '3', '--threads', threads];
      return { ...(await answer(join(instances, name), ...args)), seconds: 0, threads: 0 };
    };
    expect(await solved('2')).toEqual(await solved('1'));
    expect(await answer(join(instances, name), '--epochs', '4', '--streams', '1')).toMatchObject({ streams: 1 });
  });

  it('decodes no more plans than it may', async () => {
    const project = readInstance(readFileSync(join(instances, 'j3029_6.sm'), 'utf8'), null);
    const search = project.search({ seed: 1, stream: 0, epochSchedules: 333 }) as ProjectSearch;
    for (let epoch = 1; epoch <= 3; epoch++) {
      search.runEpoch();
      expect(search.schedules).toBeGreaterThan(333 * epoch - 3);
      expect(search.schedules).toBeLessThanOrEqual(333 * epoch);
    }
    expect(await answer(join(instances, 'j3029_6.sm'), '--schedules', '2500')).toMatchObject({ epochs: 3, streams: 1 });
  });

  it('says in words what is known of the plan, and tells progress elsewhere', async () => {
    const { code, out, told } = await run(join(instances, 'la01.txt'), '--epochs', '5');
    expect(code).toBe(0);
    expect(out).toMatch(/^makespan 666, bound 666, gap 0\.0 %: proved best \(epochs: \d+\)\n$/);
    expect(told).toMatch(/epoch 0: \d+, bound 666/);
  });

  it.each([
    ['an empty file', '', /Line 1: the file holds nothing/],
    ['a job that is missing', '2 1\n0 5\n', /Line 3: the file ends before job 1 of 2/],
    ['a machine that does not exist', '1 2\n0 5 2 5\n', /Line 2: a machine "2" is not accepted. Accepted: .* 0 to 1/],
    ['a machine that comes twice', '# shop\n1 2\n0 5 0 5\n', /Line 3: machine 0 comes twice/],
    ['a duration that is no whole number', '1 1\n0 5.5\n', /Line 2: a duration "5.5" is not accepted/],
    ['a line that is too long', '1 1 1\n1 1 0 5 9\n', /Line 2: "9" is more than the line should hold/],
    ['lines behind the end', '1 1\n0 5\n0 6\n', /Line 3: the file goes on where it should end/],
    [
      'a lag without brackets',
      '1 1 0 0\n0 1 1 1 [0]\n1 1 1 2 3\n',
      /Line 3: a lag "3" is not accepted. Accepted: such as/,
    ],
    [
      'lines of a job shop that are those of a flexible one as well',
      '# two machines\n1 2\n1 1 0 5\n',
      /Line 3: .* a job shop and of a flexible job shop, which differ. Say which it is with --format jobshop or/,
    ],
    ['a mean that is none', '1 2 9\n1 1 0 5\n', /Line 1: the third number "9" is not accepted. Accepted: .* 1\.00/],
    [
      'an activity more than the file says',
      psplib({ more: ['3 1 0'] }),
      /Line 8: the section goes on where it should end/,
    ],
    ['a capacity more than there are resources', psplib({ capacities: '4 4' }), /Line 16: "4" is more than the line/],
    ['a number behind a size', psplib({ jobs: '2 3' }), /Line 1: "3" is more than the line should hold/],
    ['a project without needs', 'PRECEDENCE RELATIONS:\n', /Line 1: the line "jobs" is missing/],
  ])('refuses %s with its line', async (_, text, words) => {
    const { code, out, told } = await run(fileOf(text), '--epochs', '1');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(told).toMatch(words);
  });

  it('takes the reading that it is told where there are two', async () => {
    const file = fileOf('1 2\n1 1 0 5\n');
    expect(await answer(file, '--epochs', '1', '--format', 'jobshop')).toMatchObject({ makespan: 6 });
    expect(await answer(file, '--epochs', '1', '--format', 'flexible')).toMatchObject({ makespan: 5 });
    expect(await answer(fileOf(psplib({})), '--epochs', '1')).toMatchObject({ format: 'psplib', makespan: 6 });
  });

  it('refuses what it does not understand and says what it would', async () => {
    const file = fileOf('1 1\n0 5\n');
    await expect(solveCommand([])).rejects.toThrow(UsageError);
    await expect(solveCommand([file, '--format', 'poem'])).rejects.toThrow(
      'give jobshop or flexible or psplib or progen-max',
    );
    await expect(solveCommand([file, '--epochs', '1.5'])).rejects.toThrow('Accepted: a whole number from 0');
    await expect(solveCommand([file, '--seconds', '1', '--epochs', '1'])).rejects.toThrow('Give one of --seconds');
    await expect(solveCommand([file, '--threads', '0'])).rejects.toThrow('a whole number from 1 to 64');
    const { code, told } = await run(file, '--schedules', '100');
    expect(code).toBe(2);
    expect(told).toMatch(/psplib only/);
  });
});
