import { Button, Textarea } from '@mantine/core';
import { useState } from 'react';
import { fieldErrors } from '../api/errors.js';
import { Refusal } from '../look/notice.js';
import { questionWords as words } from '../words/bench.js';
import { useAnswer } from './use-open-questions.js';

/** The answer to one question of a laboratory. What was typed stays until the server has it. */
export function AnswerForm({ questionId, about }: { questionId: string; about: string }) {
  const [text, setText] = useState('');
  const [tried, setTried] = useState(false);
  const answer = useAnswer(questionId);
  const isMissing = tried && text.trim() === '';
  return (
    <div className="stack-tight">
      <Textarea
        label={words.answerLabel}
        aria-label={words.answerTo(about)}
        value={text}
        maxLength={500}
        rows={2}
        error={isMissing ? words.answerMissing : fieldErrors(answer.error)['answer']}
        onChange={(event) => {
          setText(event.currentTarget.value);
        }}
      />
      <Refusal error={answer.error} />
      <div>
        <Button
          loading={answer.isPending}
          onClick={() => {
            setTried(true);
            if (text.trim()) answer.mutate(text.trim());
          }}
        >
          {words.answerGo}
        </Button>
      </div>
    </div>
  );
}
