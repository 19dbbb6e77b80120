import { useState } from 'react';
import { Tag } from '../look/marks.js';
import { Refusal } from '../look/notice.js';
import { dateAndTime } from '../time/wording.js';
import { stageWords as words } from '../words/chair.js';
import { TONE } from './finding-view.js';
import { changesOf } from './history-view.js';
import { useVerdictHistory } from './use-verdict-history.js';

interface Props {
  stageId: string;
  zone: string;
  today: string;
}

/** What the checks said before, where they say something else now. Asked for only when somebody looks. */
export function VerdictHistory({ stageId, zone, today }: Props) {
  const [isOpen, setOpen] = useState(false);
  const history = useVerdictHistory(stageId, isOpen);
  const changes = changesOf(history.data?.items ?? []);
  return (
    <details
      className="sheet sheet-pad details"
      onToggle={(event) => {
        setOpen(event.currentTarget.open);
      }}
    >
      <summary>{words.history}</summary>
      <Refusal error={history.error} />
      {history.data && changes.length === 0 ? <p className="soft">{words.historyNone}</p> : null}
      {changes.map(({ subject, verdicts }) => (
        <section key={subject} className="stack-none verdict" aria-label={subject}>
          <p className="strong">{subject}</p>
          <ul>
            {verdicts.map((each) => (
              <li key={`${each.at} ${each.ruleVersion}`} className="stack-none">
                <p>
                  <Tag tone={TONE[each.verdict]}>{words.verdict[each.verdict]}</Tag> {each.reason}
                </p>
                <p className="small soft">
                  {words.said(
                    dateAndTime(each.at, zone, today),
                    each.supersededAt === null ? null : dateAndTime(each.supersededAt, zone, today),
                  )}
                  {' · '}
                  {words.rule(each.rule, each.ruleVersion)}
                </p>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </details>
  );
}
