import { TextForm } from '../drafts/text-form.js';
import { questionWords as words } from '../words/bench.js';
import { useAnswer } from './use-open-questions.js';

/** The answer to one question of a laboratory. */
export function AnswerForm({ questionId, about }: { questionId: string; about: string }) {
  const answer = useAnswer(questionId);
  return (
    <TextForm
      draftKey={`answer.${questionId}`}
      label={words.answerLabel}
      ariaLabel={words.answerTo(about)}
      missing={words.answerMissing}
      path="answer"
      go={words.answerGo}
      isMain
      send={answer}
    />
  );
}
