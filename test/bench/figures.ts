import { readFileSync } from 'node:fs';
import { availableParallelism, cpus, loadavg } from 'node:os';

/** The value below which a share of the samples lies, by the nearest rank. */
export function percentile(samples: readonly number[], share: number): number {
  const sorted = [...samples].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? NaN;
}

export const ms = (value: number): string => value.toFixed(value < 10 ? 1 : 0);

/** Rows of text in columns that line up, as Markdown. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const lines = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...lines.map((line) => (line[column] ?? '').length)));
  const draw = (line: readonly string[]): string =>
    `| ${widths.map((width, column) => (line[column] ?? '').padEnd(width)).join(' | ')} |`;
  return [draw(head), `|${widths.map((width) => '-'.repeat(width + 2)).join('|')}|`, ...rows.map(draw)].join('\n');
}

/** What the figures were taken on; a load above the number of cores means that others were at work. */
export function machine(): string {
  const load = loadavg().map((each) => each.toFixed(1));
  return `${String(availableParallelism())} cores, ${modelOf()}, Node ${process.versions.node}, load ${load.join(' ')}`;
}

function modelOf(): string {
  const model = cpus()[0]?.model ?? 'unknown processor';
  // Not every kernel tells the model to Node.
  return model === 'unknown'
    ? (/model name\s*: (.*)/.exec(readFileSync('/proc/cpuinfo', 'utf8'))?.[1] ?? model)
    : model;
}
