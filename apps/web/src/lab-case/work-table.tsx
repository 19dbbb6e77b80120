import { Link } from '@tanstack/react-router';
import { QuestionNote } from '../lab-questions/question-note.js';
import { Mark } from '../look/marks.js';
import { labCaseWords as words } from '../words/bench.js';
import type { WorkRow } from './lab-case-view.js';

/** The work of one case between its visits, in the order of the path. */
export function WorkTable({ rows }: { rows: WorkRow[] }) {
  const { columns } = words;
  return (
    <div className="sheet scroll-x" tabIndex={0} role="group" aria-label={words.work}>
      <table className="table work-table">
        <thead>
          <tr>
            <th scope="col">{columns.what}</th>
            <th scope="col">{columns.when}</th>
            <th scope="col">{columns.where}</th>
            <th scope="col">{columns.due}</th>
            <th scope="col">{columns.state}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key} className={row.kind === 'visit' ? 'work-visit' : undefined}>
              <td>
                <span className={row.kind === 'visit' ? 'strong' : undefined}>{row.what}</span>
                <span className="small soft"> {row.detail}</span>
                {row.note ? <p className="small">{row.note}</p> : null}
                {row.question ? <QuestionNote lines={row.question} /> : null}
              </td>
              <td className="nowrap">{row.when}</td>
              <td>{row.where}</td>
              <td className="nowrap">{row.due}</td>
              <td>
                <span className="case-state" data-shape={row.mark}>
                  <Mark shape={row.mark} /> {row.state}
                </span>
                {row.list ? (
                  <div className="small nowrap no-print">
                    <Link
                      to="/bench"
                      search={{ ...row.list, from: row.list.on }}
                      hash="work-list"
                      aria-label={words.showInListOf(row.what)}
                    >
                      {words.showInList}
                    </Link>
                  </div>
                ) : null}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
