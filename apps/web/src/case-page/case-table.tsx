import { Link } from '@tanstack/react-router';
import { Mark } from '../look/marks.js';
import { caseWords as words } from '../words/case.js';
import type { CaseRow } from './case-page-view.js';

interface Props {
  caseId: string;
  rows: CaseRow[];
  mayChange: boolean;
  mayTreat: boolean;
}

/** Visits and laboratory steps of the case; laboratory steps stand smaller, below the visit they follow. */
export function CaseTable({ caseId, rows, mayChange, mayTreat }: Props) {
  const columns = words.columns;
  return (
    <div className="sheet scroll-x" tabIndex={0} role="group" aria-label={words.stages}>
      <table className="table case-table">
        <thead>
          <tr>
            <th scope="col">{columns.what}</th>
            <th scope="col">{columns.when}</th>
            <th scope="col">{columns.where}</th>
            <th scope="col">{columns.state}</th>
            {mayChange ? (
              <th scope="col" className="no-print">
                {columns.act}
              </th>
            ) : null}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key} className={row.kind === 'lab' ? 'case-step' : undefined}>
              <td>
                {row.kind === 'visit' && mayTreat && row.stageId ? (
                  <Link to="/chair/stages/$stageId" params={{ stageId: row.stageId }} className="strong">
                    {row.what}
                  </Link>
                ) : (
                  <span className={row.kind === 'visit' ? 'strong' : undefined}>{row.what}</span>
                )}
                <span className="small soft"> {row.detail}</span>
              </td>
              <td className="nowrap">{row.when}</td>
              <td>{row.where}</td>
              <td>
                <span className="case-state" data-shape={row.mark}>
                  <Mark shape={row.mark} /> {row.state}
                </span>
              </td>
              {mayChange ? (
                <td className="no-print">
                  {row.change ? (
                    <Link
                      to="/desk/cases/$caseId/visits/$appointmentId"
                      params={{ caseId, appointmentId: row.change.appointmentId }}
                      aria-label={words.changeOf(row.change.words, row.what)}
                      className="small nowrap"
                    >
                      {row.change.words}
                    </Link>
                  ) : null}
                </td>
              ) : null}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
