import { useId, type ReactNode } from 'react';

interface Props {
  title: string;
  columns: readonly string[];
  rows: readonly { id: string; head: ReactNode; cells: readonly ReactNode[] }[];
}

/** Facts of one kind under their heading, one line each. */
export function FactsTable({ title, columns, rows }: Props) {
  const id = useId();
  return (
    <section className="stack-tight" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <div className="sheet scroll-x" tabIndex={0} role="group" aria-label={title}>
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
    </section>
  );
}
