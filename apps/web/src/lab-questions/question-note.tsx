import { Tag } from '../look/marks.js';
import { questionWords as words } from '../words/bench.js';
import './question-note.css';
import type { QuestionLines } from './question-view.js';

/** A question to the clinic as the bench sees it: open with what that means, or with its answer. */
export function QuestionNote({ lines }: { lines: QuestionLines }) {
  return (
    <div className="small stack-none question-note">
      <p>
        <Tag tone={lines.isOpen ? 'caution' : 'go'}>{lines.isOpen ? words.open : words.closed}</Tag>{' '}
        <span className="soft">{lines.asked}</span>
      </p>
      <p>{lines.question}</p>
      <p className="soft">{lines.then}</p>
      {lines.answer ? <p className="strong">{lines.answer}</p> : null}
    </div>
  );
}
