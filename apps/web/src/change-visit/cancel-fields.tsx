import { Radio, TextInput } from '@mantine/core';
import type { PreviewCancel } from '@archwright/contracts';
import { changeWords as words } from '../words/case.js';

export interface CancelDraft {
  then: PreviewCancel['then'];
  /** Day from which the patient can come again; empty: any other time will do. */
  againOn: string;
}

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
        <TextInput
          type="date"
          min={today}
          className="short-field"
          label={words.againOn}
          description={words.againOnHint}
          value={draft.againOn}
          onChange={(event) => {
            onChange({ ...draft, againOn: event.currentTarget.value });
          }}
        />
      ) : null}
    </>
  );
}
