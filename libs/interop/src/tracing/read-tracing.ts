import { readColumns, TableFileError } from '../tables/read-columns.js';

const PHASES = ['right', 'left', 'protrusive', 'closure'] as const;

/** One digitised point of a tracing, mm. */
export interface TracingRow {
  readonly phase: (typeof PHASES)[number];
  readonly x: number;
  readonly y: number;
}

/**
 * Digitised tracing: a table with the header `phase,x_mm,y_mm`, points in the order in which they were drawn.
 *
 * @throws {TableFileError} naming the missing column, or the first phase or cell that is not accepted
 */
export function readTracing(bytes: Uint8Array): TracingRow[] {
  const table = readColumns(bytes);
  const x = table.column('x_mm');
  const y = table.column('y_mm');
  return table.texts('phase').map((text, at) => {
    const phase = PHASES.find((name) => name === text.toLowerCase());
    if (phase === undefined) {
      throw new TableFileError(
        'cell',
        `Line ${String(table.lineOf(at))}: there is no phase "${text.slice(0, 40)}". Accepted: ${PHASES.join(', ')}.`,
        { line: table.lineOf(at) },
      );
    }
    return { phase, x: x[at] ?? Number.NaN, y: y[at] ?? Number.NaN };
  });
}
