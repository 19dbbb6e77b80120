import { Button } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { Refusal } from '../look/notice.js';
import { screeningWords as words } from '../words/screening.js';
import { findingRows } from './findings-view.js';
import { useFindings } from './use-findings.js';

/** What stands out and nobody has looked at yet; nothing when there is nothing. It waits for nobody. */
export function FindingsList({ zone, today }: { zone: string; today: string }) {
  const { list, see } = useFindings();
  const rows = findingRows(list.data?.items ?? [], zone, today);
  if (rows.length === 0) return <Refusal error={list.error} onRetry={() => void list.refetch()} />;
  return (
    <section className="stack-tight" aria-labelledby="stands-out">
      <h2 id="stands-out">{words.title}</h2>
      <p className="small soft">{words.note}</p>
      <Refusal error={see.error} />
      <ul className="sheet lines">
        {rows.map(({ finding, caseId, about, small, sentence }) => (
          <li key={finding.id} className="line stack-none">
            <div className="row">
              {caseId === null ? (
                <span className="strong">{about}</span>
              ) : (
                <Link to="/desk/cases/$caseId" params={{ caseId }} className="strong">
                  {about}
                </Link>
              )}
              <Button
                variant="default"
                size="xs"
                aria-label={words.markSeen(about)}
                loading={see.isPending && see.variables.id === finding.id}
                onClick={() => {
                  see.mutate(finding);
                }}
              >
                {words.seen}
              </Button>
            </div>
            <p>{sentence}</p>
            <p className="small soft">{small}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}
