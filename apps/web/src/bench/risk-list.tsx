import type { LoadView } from '@archwright/contracts';
import { Link } from '@tanstack/react-router';
import { Tag } from '../look/marks.js';
import { benchWords as words } from '../words/bench.js';

/** Cases that will be late, each with its cause. */
export function RiskList({ atRisk, mayOpen }: { atRisk: LoadView['atRisk']; mayOpen: boolean }) {
  return (
    <section className="stack-tight" aria-labelledby="at-risk">
      <h2 id="at-risk">{words.riskTitle}</h2>
      <ul className="sheet lines">
        {atRisk.length === 0 ? <li className="line soft">{words.noRisk}</li> : null}
        {atRisk.map((risk) => (
          <li key={risk.caseId + risk.sentence} className="line stack-none">
            <p>
              {mayOpen ? (
                <Link to="/desk/cases/$caseId" params={{ caseId: risk.caseId }} className="strong">
                  {risk.caseNumber}
                </Link>
              ) : (
                <span className="strong">{risk.caseNumber}</span>
              )}{' '}
              {risk.sentence}
            </p>
            <div>
              <Tag>{risk.cause}</Tag>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
