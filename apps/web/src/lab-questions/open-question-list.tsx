import { Link } from '@tanstack/react-router';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { useNow } from '../look/clock.js';
import { Mark, Tag } from '../look/marks.js';
import { Refusal } from '../look/notice.js';
import { questionWords as words } from '../words/bench.js';
import { AnswerForm } from './answer-form.js';
import { openQuestions } from './question-view.js';
import { useOpenQuestions } from './use-open-questions.js';

/** Questions of the laboratory that stop its work, each with its answer where the person may give it; nothing when there are none. */
export function OpenQuestionList({ today }: { today: string }) {
  const { role } = useSession();
  const list = useOpenQuestions();
  const now = useNow(60_000);
  const rows = list.data ? openQuestions(list.data, now, today) : [];
  if (rows.length === 0) return <Refusal error={list.error} onRetry={() => void list.refetch()} />;
  return (
    <section className="stack-tight" aria-labelledby="lab-questions">
      <h2 id="lab-questions">{words.title}</h2>
      <ul className="sheet lines">
        {rows.map((row) => (
          <li key={row.id} className="line stack-tight">
            <div className="row">
              <Mark shape="needs-person" />
              <Link to="/desk/cases/$caseId" params={{ caseId: row.caseId }} className="strong">
                {row.caseNumber} · {row.patient}
              </Link>
              {row.isOverdue ? <Tag tone="stop">{words.overdue}</Tag> : null}
            </div>
            <p className="small soft">
              {row.about} · {row.asked}
            </p>
            <p>{row.question}</p>
            {may.treat(role) ? <AnswerForm questionId={row.id} about={row.caseNumber} /> : null}
          </li>
        ))}
      </ul>
    </section>
  );
}
