import { Radio } from '@mantine/core';
import { DateField } from '../look/date-field.js';
import { changeWords as words } from '../words/case.js';
import type { CancelDraft } from './change-draft.js';

interface Props {
  draft: CancelDraft;
  today: string;
  onChange: (draft: CancelDraft) => void;
}

/** What becomes of the rest when the visit is cancelled, and when the patient can come again. */
export function CancelFields({ draft, today, onChange }: Props) {
  return (
    <>
      <Radio.Group
        label={words.then}
        value={draft.then}
        onChange={(value) => {
          onChange({ ...draft, then: value === 'drop-rest' ? 'drop-rest' : 'replan' });
        }}
      >
        <div className="row ticks">
          <Radio value="replan" label={words.replan} />
          <Radio value="drop-rest" label={words.dropRest} />
        </div>
      </Radio.Group>
      {draft.then === 'replan' ? (
        <DateField
          min={today}
          className="short-field"
          label={words.againOn}
          description={words.againOnHint}
          value={draft.againOn}
          onChange={(againOn) => {
            onChange({ ...draft, againOn });
          }}
        />
      ) : null}
    </>
  );
}
