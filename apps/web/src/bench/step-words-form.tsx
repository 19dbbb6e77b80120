import { Button } from '@mantine/core';
import type { LabStepAction } from '@archwright/contracts';
import { TextForm } from '../drafts/text-form.js';
import type { Sending } from '../drafts/use-fields-form.js';
import { benchWords as words } from '../words/bench.js';
import { frameWords } from '../words/frame.js';

interface Props {
  stepId: string;
  purpose: 'ask' | 'reject';
  /** What was refused is said beneath the step. */
  act: Sending<LabStepAction>;
  onCancel: () => void;
}

/** What the bench has to write before it asks or rejects. */
export function StepWordsForm({ stepId, purpose, act, onCancel }: Props) {
  const isAsked = purpose === 'ask';
  return (
    <TextForm
      draftKey={`${purpose}.${stepId}`}
      label={isAsked ? words.askLabel : words.rejectLabel}
      missing={words.textMissing}
      path={isAsked ? 'question' : 'reason'}
      go={isAsked ? words.send : words.rejectGo}
      isMain
      autoFocus
      className="work-form"
      send={{
        ...act,
        mutateAsync: (text) =>
          act.mutateAsync(isAsked ? { action: 'ask', question: text } : { action: 'reject', reason: text }),
      }}
      isRefusedElsewhere
    >
      <Button variant="default" onClick={onCancel}>
        {frameWords.cancel}
      </Button>
    </TextForm>
  );
}
