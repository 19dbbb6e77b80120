import type { AftercareView } from '@archwright/contracts';
import { Link } from '@tanstack/react-router';
import { Tag } from '../look/marks.js';
import { aftercareWords as words } from '../words/aftercare.js';
import { laterCheckRows } from './aftercare-view.js';

/** Checks that the placement made due, by which rule, and the cases that follow this one. */
export function LaterChecks({ after }: { after: AftercareView }) {
  const rows = laterCheckRows(after.recalls, after.on);
  return (
    <section className="sheet sheet-pad stack-tight" aria-labelledby="later-checks">
      <h2 id="later-checks">{words.laterChecks}</h2>
      {rows.length === 0 ? <p className="soft">{words.noLaterChecks}</p> : null}
      <ul className="stack-tight">
        {rows.map((row) => (
          <li key={row.id}>
            {row.title}{' '}
            <span className="small soft">
              {row.due} <Tag>{row.state}</Tag>
            </span>
          </li>
        ))}
      </ul>
      <p className="small soft">{after.recallRule}</p>
      {after.followingCases.length > 0 ? (
        <>
          <h3>{words.following}</h3>
          <ul>
            {after.followingCases.map((one) => (
              <li key={one.id}>
                <Link to="/desk/cases/$caseId" params={{ caseId: one.id }}>
                  {one.number}
                </Link>{' '}
                {one.title}
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </section>
  );
}
