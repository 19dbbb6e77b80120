import { DomainError } from '@archwright/kernel';

type Command = (args: readonly string[]) => Promise<number>;

/** Each command is loaded when it is called, so that none pays for the others. */
const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
  start: async () => {
    const { startCommand } = await import('./start/start-command.js');
    const { loadDemo } = await import('./demo-practice/load-demo.js');
    const { SystemClock } = await import('@archwright/platform');
    const clock = new SystemClock(process.env.ARCHWRIGHT_CLOCK ?? null);
    const { FIRST_WEEKS_MS, playFirstWeeks } = await import('./demo/first-weeks.js');
    const now = () => clock.now();
    return (args) => startCommand(args, { now, load: loadDemo, firstWeeksMs: FIRST_WEEKS_MS, playFirstWeeks });
  },
  demo: async () => (await import('./demo/demo-command.js')).demoCommand,
  test: async () => (await import('./test/test-command.js')).testCommand,
  bench: async () => (await import('../../../test/bench/bench-command.js')).benchCommand,
  lint: async () => (await import('./test/lint-command.js')).lintCommand,
  import: async () => (await import('./import/import-command.js')).importCommand,
  audit: async () => (await import('./audit-command.js')).auditCommand,
  'check:reference': async () => (await import('./check-reference/check-reference-command.js')).checkReferenceCommand,
  trace: async () => (await import('./trace/trace-command.js')).traceCommand,
  screen: async () => (await import('./screen/screen-command.js')).screenCommand,
  measure: async () => (await import('./measure/measure-command.js')).measureCommand,
  solve: async () => (await import('./solve/solve-command.js')).solveCommand,
  provision: async () => (await import('./provision-command.js')).provisionCommand,
};

/** They answer from what they are given and keep nothing: a refusal is no answer, and 1 would be one of check:reference. */
const ANSWERS_FROM_A_FILE = new Set(['trace', 'screen', 'measure', 'solve']);

async function main([name = '', ...args]: readonly string[]): Promise<number> {
  const load = COMMANDS[name];
  if (load === undefined) {
    process.stderr.write(`There is no command "${name}"; the commands are ${Object.keys(COMMANDS).join(', ')}.\n`);
    return 2;
  }
  try {
    return await (
      await load()
    )(args);
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    process.stderr.write(`${error.message}\n`);
    return error.code === 'cli.usage' || ANSWERS_FROM_A_FILE.has(name) ? 2 : 1;
  }
}

process.exitCode = await main(process.argv.slice(2));
