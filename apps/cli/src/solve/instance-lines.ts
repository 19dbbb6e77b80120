import { DomainError } from '@archwright/kernel';

/** An instance file does not keep to its format. */
export class InstanceFileError extends DomainError {
  constructor(line: number, problem: string) {
    super('cli.instance-file', `Line ${String(line)}: ${problem}`, { line });
  }
}

/** A line of a file that holds something, cut at white space. */
export interface InstanceLine {
  /** From 1. */
  readonly number: number;
  readonly words: readonly string[];
}

/** Times are added up in 32 bits. */
export const MOST_TIME = 1_000_000_000;

/** Lines that hold something, without comments ("#" at the front). */
export function instanceLines(text: string): InstanceLine[] {
  return text
    .split(/\r\n|\r|\n/)
    .map((line, at) => ({ number: at + 1, words: line.trim().split(/\s+/) }))
    .filter(({ words: [first = ''] }) => first !== '' && !first.startsWith('#'));
}

/** @throws {InstanceFileError} for a word that is no whole number, or one outside `[least, most]` */
export function numberAt(
  { number, words }: InstanceLine,
  at: number,
  meaning: string,
  [least, most]: readonly [number, number] = [0, MOST_TIME],
): number {
  const word = words[at];
  if (word === undefined) throw new InstanceFileError(number, `${meaning} is missing.`);
  const value = Number(word);
  if (/^[+-]?\d+(\.0*)?$/.test(word) && value >= least && value <= most) return value;
  throw new InstanceFileError(
    number,
    `${meaning} "${word}" is not accepted. Accepted: a whole number from ${String(least)} to ${String(most)}.`,
  );
}

/** @throws {InstanceFileError} for words beyond `count` */
export function requireEnd({ number, words }: InstanceLine, count: number): void {
  const extra = words[count];
  if (extra !== undefined) throw new InstanceFileError(number, `"${extra}" is more than the line should hold.`);
}

/** @throws {InstanceFileError} when the file ends before line `at` of those that hold something */
export function lineAt(lines: readonly InstanceLine[], at: number, meaning: string): InstanceLine {
  const line = lines[at];
  if (line !== undefined) return line;
  throw new InstanceFileError((lines.at(-1)?.number ?? 0) + 1, `the file ends before ${meaning}.`);
}

/** @throws {InstanceFileError} for lines beyond `count` */
export function requireLastLine(lines: readonly InstanceLine[], count: number): void {
  const extra = lines[count];
  if (extra !== undefined) throw new InstanceFileError(extra.number, 'the file goes on where it should end.');
}
