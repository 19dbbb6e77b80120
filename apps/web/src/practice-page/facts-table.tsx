import { useId } from 'react';
import { PlainTable, type PlainRow } from '../look/plain-table.js';

interface Props {
  title: string;
  columns: readonly string[];
  rows: readonly PlainRow[];
}

/** Facts of one kind under their heading, one line each. */
export function FactsTable({ title, columns, rows }: Props) {
  const id = useId();
  return (
    <section className="stack-tight" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <PlainTable label={title} columns={columns} rows={rows} />
    </section>
  );
}
