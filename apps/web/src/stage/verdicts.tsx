import { JUDGEMENT_NOTE } from '@archwright/measures';
import { Tag } from '../look/marks.js';
import { spelled } from '../words/plural.js';
import { stageWords as words } from '../words/chair.js';
import { TONE, type Finding, type Findings } from './finding-view.js';

function Said({ finding }: { finding: Finding }) {
  return (
    <li className="line stack-none verdict">
      <div className="row">
        <Tag tone={TONE[finding.verdict]}>{words.verdict[finding.verdict]}</Tag>
        <span className="strong">{words.action[finding.action]}</span>
      </div>
      <p>{finding.reason}</p>
      {finding.value !== null || finding.limit !== null ? (
        <p>
          {finding.value !== null ? `${words.value} ${finding.value}` : ''}
          {finding.value !== null && finding.limit !== null ? ' · ' : ''}
          {finding.limit !== null ? `${words.limit} ${finding.limit}` : ''}
        </p>
      ) : null}
      {finding.caution ? <p className="capture-caution">▲ {finding.caution}</p> : null}
      <p className="small soft">
        {words.source}: {finding.source} ({spelled(finding.standing)}) · {words.rule(finding.rule, finding.ruleVersion)}
      </p>
    </li>
  );
}

function List({ findings }: { findings: Finding[] }) {
  return (
    <ul>
      {findings.map((finding) => (
        <Said key={`${finding.rule} ${finding.reason}`} finding={finding} />
      ))}
    </ul>
  );
}

/** Each verdict with its reason, the value against its limit, and where the rule comes from. */
export function Verdicts({ shown, checking }: { shown: Findings; checking: boolean }) {
  const { findings, derived, isLive } = shown;
  const toMind = findings.filter(({ verdict }) => verdict !== 'pass');
  const passed = findings.filter(({ verdict }) => verdict === 'pass');
  const waits = checking && !isLive;
  return (
    <section className="sheet" aria-labelledby="verdicts" aria-busy={waits}>
      <div className="line stack-none">
        <h2 id="verdicts">{words.verdicts}</h2>
        <p className="soft" role="status">
          {isLive ? words.live : waits ? words.checking : findings.length === 0 ? words.noVerdicts : ''}
        </p>
        <p className="small soft">{JUDGEMENT_NOTE}</p>
        {derived.map(({ code, name, value, unit }) => (
          <p key={code}>
            {name}:{' '}
            <strong>
              {value} {unit}
            </strong>
          </p>
        ))}
      </div>
      <div className={waits ? 'waiting' : undefined}>
        <List findings={toMind} />
        {passed.length > 0 ? (
          <details className="details verdict">
            <summary className="line">{words.passedChecks(passed.length)}</summary>
            <List findings={passed} />
          </details>
        ) : null}
      </div>
    </section>
  );
}
