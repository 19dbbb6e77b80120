import { writeFile } from 'node:fs/promises';
import { readTracing } from '@archwright/interop';
import { drawEvaluation, evaluateTracing, type TracingInput } from '@archwright/tracing';
import { callersPath, readArguments, UsageError } from '../arguments.js';
import { readInput } from '../read-input.js';
import { tracingLines, tracingReport } from './tracing-report.js';

const USAGE = `cli trace FILE --stylus lower|upper --view as-worn|mirrored [--json] [--svg OUT]
FILE: CSV with the header phase,x_mm,y_mm; phases right, left, protrusive, closure.
--stylus: the jaw that carried the needle. --view: mirrored for a picture or digitisation of an upper plate from below.`;

function choice<const Choice extends string>(
  name: string,
  given: string | undefined,
  choices: readonly Choice[],
): Choice {
  const found = choices.find((option) => option === given);
  if (found !== undefined) return found;
  const said = given === undefined ? `--${name} is missing` : `--${name} "${given}" is not accepted`;
  throw new UsageError(`${said}. Accepted: ${choices.join(', ')}.`, USAGE);
}

/** Evaluates a digitised tracing: file in, answer out. Nothing is kept. */
export async function traceCommand(args: readonly string[]): Promise<number> {
  const { values, positionals } = readArguments(args, USAGE, {
    stylus: { type: 'string' },
    view: { type: 'string' },
    json: { type: 'boolean' },
    svg: { type: 'string' },
    help: { type: 'boolean' },
  });
  if (values.help === true) {
    process.stdout.write(`Usage: ${USAGE}\n`);
    return 0;
  }
  const [file, ...rest] = positionals;
  if (file === undefined || rest.length > 0) throw new UsageError('Give one file.', USAGE);
  const stylusOn = choice('stylus', values.stylus, ['lower', 'upper']);
  const view = choice('view', values.view, ['as-worn', 'mirrored']);
  const input: TracingInput = { points: readTracing(await readInput(file)), stylusOn, view };
  const evaluation = evaluateTracing(input);
  const report = tracingReport(evaluation);
  if (values.svg !== undefined) await writeFile(callersPath(values.svg), drawEvaluation(input, evaluation));
  process.stdout.write(
    values.json === true ? `${JSON.stringify(report, null, 2)}\n` : `${tracingLines(report).join('\n')}\n`,
  );
  return 0;
}
