import { Link } from '@tanstack/react-router';
import { Notice } from '../look/notice.js';
import { PlainTable } from '../look/plain-table.js';
import { importWords as words } from '../words/import.js';
import type { OutcomeView } from './import-view.js';

/** What came of a file, or would come of it. */
export function Outcome({ view: { tone, sentences, hasRepairs, tables } }: { view: OutcomeView }) {
  return (
    <div className="stack-tight">
      <Notice tone={tone}>
        {sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        {hasRepairs ? <Link to="/desk/falls-away">{words.seeRepairs}</Link> : null}
      </Notice>
      {tables.map(({ title, columns, rows }) => (
        <section key={title} className="stack-tight">
          <h3>{title}</h3>
          <PlainTable label={title} columns={columns} rows={rows} />
        </section>
      ))}
    </div>
  );
}
