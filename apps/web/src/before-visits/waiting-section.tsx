import type { ReactNode } from 'react';
import { Outrun } from '../look/outrun.js';
import { Refusal } from '../look/notice.js';
import { Empty, FirstWait } from '../look/screen.js';
import { beforeVisitsWords as words } from '../words/before-visits.js';

interface Listed {
  data: { items: unknown[]; next: string | null } | undefined;
  error: Error | null;
  refetch: () => unknown;
}

interface Decision {
  error: Error | null;
  variables: { id: string } | undefined;
}

interface Props<Row> {
  title: string;
  /** What will appear here, and how it comes to be. */
  none: string;
  list: Listed;
  rows: readonly Row[];
  decide: Decision;
  children: (row: Row) => ReactNode;
}

/** One kind of things that wait for a person. A refusal whose row is gone meanwhile is said above the list. */
export function WaitingSection<Row extends { id: string }>({ title, none, list, rows, decide, children }: Props<Row>) {
  const isGone = decide.error !== null && !rows.some(({ id }) => id === decide.variables?.id);
  return (
    <section className="stack-tight" aria-label={title}>
      <h2>{title}</h2>
      <Refusal error={list.error} onRetry={() => void list.refetch()} />
      {isGone ? <Outrun error={decide.error} /> : null}
      {list.data ? (
        <ul className="sheet lines">
          {rows.length === 0 ? (
            <li>
              <Empty>{none}</Empty>
            </li>
          ) : null}
          {rows.map((row) => (
            <li key={row.id} className="line stack-tight">
              {children(row)}
            </li>
          ))}
        </ul>
      ) : list.error ? null : (
        <FirstWait what={words.loading} />
      )}
      {list.data?.next ? <p className="small soft">{words.more(rows.length)}</p> : null}
    </section>
  );
}
