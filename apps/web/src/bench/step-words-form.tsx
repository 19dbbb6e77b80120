import { Button, Textarea } from '@mantine/core';
import { useState } from 'react';
import { fieldErrors } from '../api/errors.js';
import { benchWords as words } from '../words/bench.js';
import { frameWords } from '../words/frame.js';

interface Props {
  purpose: 'ask' | 'reject';
  pending: boolean;
  error: unknown;
  onSend: (text: string) => void;
  onCancel: () => void;
}

/** What the bench has to write before it asks or rejects. What was typed stays until the server has it. */
export function StepWordsForm({ purpose, pending, error, onSend, onCancel }: Props) {
  const [text, setText] = useState('');
  const [tried, setTried] = useState(false);
  const refused = fieldErrors(error);
  const isMissing = tried && text.trim() === '';
  return (
    <div className="work-form stack-tight">
      <Textarea
        label={purpose === 'ask' ? words.askLabel : words.rejectLabel}
        value={text}
        maxLength={500}
        autoFocus
        error={isMissing ? words.textMissing : (refused['question'] ?? refused['reason'])}
        onChange={(event) => {
          setText(event.currentTarget.value);
        }}
      />
      <div className="row">
        <Button
          loading={pending}
          onClick={() => {
            setTried(true);
            if (text.trim()) onSend(text.trim());
          }}
        >
          {purpose === 'ask' ? words.send : words.rejectGo}
        </Button>
        <Button variant="default" onClick={onCancel}>
          {frameWords.cancel}
        </Button>
      </div>
    </div>
  );
}
