import { Link } from '@tanstack/react-router';
import { Notice } from '../look/notice.js';
import { setupWords as words } from '../words/setup.js';
import type { PreviewView } from './setup-view.js';

/** What a change would do to booked time, said before it is made. */
export function PreviewSheet({ view: { sentence, settled, rows } }: { view: PreviewView }) {
  return (
    <div className="stack-tight">
      <Notice tone={rows.length > 0 ? 'caution' : 'plain'}>
        {sentence} {settled}
      </Notice>
      {rows.length > 0 ? (
        <div className="sheet scroll-x" tabIndex={0} role="group" aria-label={words.strandedTitle}>
          <table className="table">
            <thead>
              <tr>
                {Object.values(words.strandedColumns).map((column) => (
                  <th key={column} scope="col">
                    {column}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map(({ key, when, what, who, caseId, why }) => (
                <tr key={key}>
                  <th scope="row">{when}</th>
                  <td>{what}</td>
                  <td>
                    {caseId === null ? (
                      who
                    ) : (
                      <Link to="/desk/cases/$caseId" params={{ caseId }}>
                        {who}
                      </Link>
                    )}
                  </td>
                  <td>{why}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      ) : null}
    </div>
  );
}
