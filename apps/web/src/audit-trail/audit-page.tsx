import { Button } from '@mantine/core';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { Refusal } from '../look/notice.js';
import { PlainTable } from '../look/plain-table.js';
import { Empty, FirstWait, ScreenHead, Waiting } from '../look/screen.js';
import { PracticePlaces } from '../practice-page/practice-places.js';
import { practiceZone } from '../time/practice-zone.js';
import { auditWords as words } from '../words/audit.js';
import { AuditForm } from './audit-form.js';
import { auditRows, readSearch, type AuditRow } from './audit-view.js';
import { useAuditTrail } from './use-audit-trail.js';

/** The audit trail, searched by person, deed, case and day. */
export function AuditPage() {
  const search = useSearch({ from: '/inside/practice/audit' });
  const navigate = useNavigate();
  const reading = readSearch(search);
  const { practice, users, found } = useAuditTrail('query' in reading ? reading.query : null);
  const entries = found.data?.pages.flatMap(({ items }) => items) ?? [];
  const rows = auditRows(entries, practiceZone(practice), practice.today);
  return (
    <>
      <ScreenHead
        title={words.title}
        sentence={found.data ? words.sentence(rows.length, !found.hasNextPage) : undefined}
      />
      <div className="stack">
        <PracticePlaces />
        <AuditForm
          search={search}
          people={users.data?.items ?? []}
          onFind={(wanted) => void navigate({ to: '/practice/audit', search: wanted })}
        />
        <Refusal error={found.error ?? users.error} onRetry={() => void found.refetch()} />
        {found.isLoading ? <FirstWait what={words.loading} /> : null}
        {found.data && rows.length === 0 ? <Empty>{words.none}</Empty> : null}
        {rows.length > 0 ? (
          <Waiting busy={found.isPlaceholderData}>
            <Entries rows={rows} />
          </Waiting>
        ) : null}
        {found.hasNextPage ? (
          <div>
            <Button variant="default" loading={found.isFetchingNextPage} onClick={() => void found.fetchNextPage()}>
              {words.more}
            </Button>
          </div>
        ) : null}
      </div>
    </>
  );
}

function Entries({ rows }: { rows: readonly AuditRow[] }) {
  return (
    <PlainTable
      label={words.title}
      columns={Object.values(words.columns)}
      rows={rows.map(({ id, at, by, deed, about, caseId, details }) => ({
        id,
        head: at,
        cells: [
          by,
          deed,
          caseId === null ? (
            about
          ) : (
            <Link key="case" to="/desk/cases/$caseId" params={{ caseId }}>
              {about}
            </Link>
          ),
          <span key="details" className="small soft breakable">
            {details}
          </span>,
        ],
      }))}
    />
  );
}
