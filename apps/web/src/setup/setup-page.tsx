import { Link } from '@tanstack/react-router';
import { Tag } from '../look/marks.js';
import { NotYet } from '../look/not-yet.js';
import { Empty, ScreenHead } from '../look/screen.js';
import { FactsTable } from '../practice-page/facts-table.js';
import { PracticePlaces } from '../practice-page/practice-places.js';
import { setupWords as words } from '../words/setup.js';
import { NEW_RECORD, setupGroups, setupSentence, type SetupGroup } from './setup-view.js';
import { useSetup } from './use-setup.js';

/** Everything that the practice consists of, each part with the way to change it. */
export function SetupPage() {
  const { setup } = useSetup();
  if (!setup.data) {
    return <NotYet asked={setup} what={words.loading} />;
  }
  return (
    <>
      <ScreenHead title={words.title} sentence={setupSentence(setup.data)} />
      <div className="stack">
        <PracticePlaces />
        {setupGroups(setup.data).map((group) => (
          <Group key={group.kind} group={group} />
        ))}
      </div>
    </>
  );
}

function Group({ group: { kind, title, rows, columns } }: { group: SetupGroup }) {
  return (
    <div className="stack-tight">
      {rows.length === 0 ? (
        <section>
          <h2>{title}</h2>
          <Empty>{words.none}</Empty>
        </section>
      ) : (
        <FactsTable
          title={title}
          columns={[words.name, ...columns.map((column) => words.columns[column])]}
          rows={rows.map((row) => ({
            id: row.id,
            head: (
              <span className="row">
                <Link to="/practice/setup/$recordId" params={{ recordId: row.id }}>
                  {row.name}
                </Link>
                {row.isRetired ? <Tag>{words.retired}</Tag> : null}
              </span>
            ),
            cells: columns.map((column) =>
              column === 'hours' ? <Lines key={column} lines={row.hours} /> : row[column],
            ),
          }))}
        />
      )}
      <div>
        <Link to="/practice/setup/$recordId" params={{ recordId: NEW_RECORD }} search={{ kind }}>
          {words.add(kind)}
        </Link>
      </div>
    </div>
  );
}

function Lines({ lines }: { lines: readonly string[] }) {
  return (
    <ul>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
