import { Link } from '@tanstack/react-router';
import { Notice } from '../look/notice.js';
import { PlainTable } from '../look/plain-table.js';
import { setupWords as words } from '../words/setup.js';
import type { PreviewView } from './setup-view.js';

interface Props {
  view: PreviewView;
  /** A closure has repairs looked for by itself. */
  isClosure: boolean;
}

/** What a change would do to booked time, said before it is made. */
export function PreviewSheet({ view: { sentence, settled, rows }, isClosure }: Props) {
  return (
    <div className="stack-tight">
      <Notice tone={rows.length > 0 ? 'caution' : 'plain'}>
        {sentence} {settled}
      </Notice>
      {rows.length > 0 ? (
        <PlainTable
          label={words.strandedTitle}
          columns={Object.values(words.strandedColumns)}
          rows={rows.map(({ id, when, what, who, caseId, why }) => ({
            id,
            head: when,
            cells: [what, caseId === null ? who : <CaseLink key="case" caseId={caseId} who={who} />, why],
          }))}
        />
      ) : null}
      {rows.length > 0 ? (
        <p className="small">
          {isClosure ? (
            words.closureRepair
          ) : (
            <>
              <Link to="/desk/falls-away">{words.repairLink}</Link> {words.repair}
            </>
          )}
        </p>
      ) : null}
    </div>
  );
}

function CaseLink({ caseId, who }: { caseId: string; who: string }) {
  return (
    <Link to="/desk/cases/$caseId" params={{ caseId }}>
      {who}
    </Link>
  );
}
