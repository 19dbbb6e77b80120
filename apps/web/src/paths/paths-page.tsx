import { Link } from '@tanstack/react-router';
import { Tag } from '../look/marks.js';
import { NotYet } from '../look/not-yet.js';
import { PlainTable } from '../look/plain-table.js';
import { ScreenHead } from '../look/screen.js';
import { PracticePlaces } from '../practice-page/practice-places.js';
import { practiceZone } from '../time/practice-zone.js';
import { pathWords as words } from '../words/paths.js';
import { pathRows, pathsSentence } from './paths-view.js';
import { usePaths } from './use-paths.js';

/** Every published version of every path. */
export function PathsPage() {
  const { practice, paths } = usePaths();
  if (!paths.data) {
    return <NotYet asked={paths} what={words.loading} />;
  }
  const { items } = paths.data;
  return (
    <>
      <ScreenHead title={words.title} sentence={pathsSentence(items)} />
      <div className="stack">
        <PracticePlaces />
        <PlainTable
          label={words.title}
          columns={Object.values(words.columns)}
          rows={pathRows(items, practiceZone(practice), practice.today).map((row) => ({
            id: row.id,
            head: (
              <Link to="/practice/paths/$versionId" params={{ versionId: row.id }}>
                {row.title}
              </Link>
            ),
            cells: [
              <span key="version" className="row">
                {row.version}
                {row.isLatest ? <Tag tone="accent">{words.latest}</Tag> : null}
                {row.isWithdrawn ? <Tag>{words.withdrawn}</Tag> : null}
              </span>,
              row.arches,
              row.visits,
              row.published,
              row.openCases,
            ],
          }))}
        />
      </div>
    </>
  );
}
