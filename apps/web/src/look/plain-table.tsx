import type { ReactNode } from 'react';

interface Props {
  /** What the table shows, for those who hear it. */
  label: string;
  columns: readonly string[];
  rows: readonly PlainRow[];
}

/** One row: its head, then a cell for each further column. */
export interface PlainRow {
  readonly id: string;
  readonly head: ReactNode;
  readonly cells: readonly ReactNode[];
}

/** A table of facts that scrolls sideways by keyboard as well, where the screen is narrow. */
export function PlainTable({ label, columns, rows }: Props) {
  return (
    <div className="sheet scroll-x" tabIndex={0} role="group" aria-label={label}>
      <table className="table">
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">{row.head}</th>
              {row.cells.map((cell, index) => (
                <td key={columns[index + 1]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
