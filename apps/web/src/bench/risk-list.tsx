import type { LoadView } from '@archwright/contracts';
import { Link } from '@tanstack/react-router';
import { CaseLink } from '../lab-case/case-link.js';
import { Mark } from '../look/marks.js';
import { benchWords as words } from '../words/bench.js';
import { toldWords } from '../words/told.js';

interface Props {
  atRisk: LoadView['atRisk'];
  laboratoryId: string;
  from: string;
}

/** Cases that will be late, each with its cause and the way to the step behind it. */
export function RiskList({ atRisk, laboratoryId, from }: Props) {
  return (
    <section className="stack-tight" aria-labelledby="at-risk">
      <h2 id="at-risk">{words.riskTitle}</h2>
      <ul className="sheet lines">
        {atRisk.length === 0 ? <li className="line soft">{words.noRisk}</li> : null}
        {atRisk.map((risk) => (
          <li key={risk.caseId + risk.sentence} className="line risk">
            <Mark shape="needs-person" />
            <div className="stack-none">
              <p>
                <CaseLink caseId={risk.caseId} number={risk.caseNumber} /> {toldWords(risk.told)}
              </p>
              <p className="small soft">{toldWords(risk.cause.told)}</p>
              <p className="small">
                <Link
                  to="/bench"
                  search={{ lab: laboratoryId, from, on: risk.on, centre: risk.workCentreId }}
                  hash="work-list"
                  aria-label={words.seeWorkOf(risk.caseNumber)}
                >
                  {words.seeWork}
                </Link>
              </p>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
