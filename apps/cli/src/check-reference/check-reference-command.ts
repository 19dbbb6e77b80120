import { fileURLToPath } from 'node:url';
import { callersPath, readArguments, UsageError } from '../arguments.js';
import { checkCase } from './check-case.js';
import type { Difference } from './compare.js';
import { readReferenceCases } from './reference-case.js';

const USAGE = 'npm run --silent check:reference [-- --data FOLDER]';
/** Without a folder: the cases that the tests hold. */
const OWN_CASES = fileURLToPath(new URL('../../../test/reference/statistics', import.meta.url));
const MOST_DIFFERENCES = 3;

/** `undefined` is no JSON: an answer that lacks an entry shows as nothing. */
const shown = (value: unknown): string =>
  typeof value === 'string' ? value : value === undefined ? 'nothing' : JSON.stringify(value);
const clipped = (text: string): string => (text.length > 120 ? `${text.slice(0, 117)}...` : text);

function sentence({ at, expected, got, difference }: Difference): string {
  const away = difference === null ? '' : `, difference ${difference.toPrecision(3)}`;
  return `  ${at === '' ? 'answer' : at}: expected ${clipped(shown(expected))}, got ${clipped(shown(got))}${away}`;
}

/** Holds the product's own functions against reference cases and says, case by case, what is met, missed, not offered. */
export async function checkReferenceCommand(args: readonly string[]): Promise<number> {
  const { values, positionals } = readArguments(args, USAGE, { data: { type: 'string' } });
  if (positionals.length > 0) throw new UsageError(`"${String(positionals[0])}" is not understood.`, USAGE);
  const cases = await readReferenceCases(values.data === undefined ? OWN_CASES : callersPath(values.data));
  const counts = { met: 0, missed: 0, 'not-offered': 0 };
  for (const reference of cases) {
    const outcome = checkCase(reference);
    counts[outcome.kind]++;
    process.stdout.write(`${outcome.kind.replace('-', ' ')}  ${reference.id} (${reference.method})\n`);
    if (outcome.kind !== 'missed') continue;
    for (const difference of outcome.differences.slice(0, MOST_DIFFERENCES)) {
      process.stdout.write(`${sentence(difference)}\n`);
    }
    const more = outcome.differences.length - MOST_DIFFERENCES;
    if (more > 0) process.stdout.write(`  and ${String(more)} more\n`);
  }
  process.stdout.write(
    `${String(counts.met)} met, ${String(counts.missed)} missed, ${String(counts['not-offered'])} not offered\n`,
  );
  return counts.missed === 0 ? 0 : 1;
}
