import type { StageView, VerdictView } from '@archwright/contracts';
import { Tag, type Tone } from '../look/marks.js';
import { spelled } from '../words/plural.js';
import { stageWords as words } from '../words/chair.js';

const TONE: Record<VerdictView['verdict'], Tone> = { pass: 'go', caution: 'caution', fail: 'stop' };

/** Each verdict with its reason, the value against its limit, and where the rule comes from. */
export function Verdicts({ view }: { view: StageView }) {
  return (
    <section className="sheet" aria-labelledby="verdicts" aria-live="polite" aria-busy={view.checking}>
      <div className="line stack-none">
        <h2 id="verdicts">{words.verdicts}</h2>
        {view.checking ? <p className="soft">{words.checking}</p> : null}
        {!view.checking && view.verdicts.length === 0 ? <p className="soft">{words.noVerdicts}</p> : null}
        {view.derived.map((derived) => (
          <p key={derived.code}>
            {derived.name}:{' '}
            <strong>
              {derived.value} {derived.unit}
            </strong>
          </p>
        ))}
      </div>
      <ul className={view.checking ? 'waiting' : undefined}>
        {view.verdicts.map((verdict) => (
          <li key={`${verdict.rule} ${verdict.at}`} className="line stack-none verdict">
            <div className="row">
              <Tag tone={TONE[verdict.verdict]}>{words.verdict[verdict.verdict]}</Tag>
              <span className="strong">{words.action[verdict.action]}</span>
            </div>
            <p>{verdict.reason}</p>
            {verdict.value !== null || verdict.limit !== null ? (
              <p>
                {verdict.value !== null ? `${words.value} ${verdict.value}` : ''}
                {verdict.value !== null && verdict.limit !== null ? ' · ' : ''}
                {verdict.limit !== null ? `${words.limit} ${verdict.limit}` : ''}
              </p>
            ) : null}
            {verdict.caution ? <p className="capture-caution">▲ {verdict.caution}</p> : null}
            <p className="small soft">
              {words.source}: {verdict.source} ({spelled(verdict.standing)}) ·{' '}
              {words.rule(verdict.rule, verdict.ruleVersion)}
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}
