import { Button, NativeSelect, Textarea, TextInput } from '@mantine/core';
import type { ChooseTeeth, RecordCapture, StageView, ToothChoiceView } from '@archwright/contracts';
import { JUDGEMENT_NOTE } from '@archwright/measures';
import { useId, useMemo, useState } from 'react';
import { fieldErrors } from '../api/errors.js';
import { Notice, Refusal } from '../look/notice.js';
import { PlainTable } from '../look/plain-table.js';
import { dateAndTime } from '../time/wording.js';
import { teethWords as words } from '../words/teeth.js';
import { MeasuredTeeth } from './measured-teeth.js';
import { RangesPicture } from './ranges-picture.js';
import { draftOf, measuredOf, readTeeth, type TeethDraft } from './teeth-draft.js';
import { teethOf } from './teeth-view.js';

interface Props {
  view: StageView;
  body: RecordCapture;
  today: string;
  choice: ToothChoiceView;
  pending: boolean;
  error: unknown;
  onKeep: (body: ChooseTeeth, done: () => void) => void;
}

const CHOSEN = ['arrangement', 'shade', 'mould'] as const;

export function TeethForm({ view, body, today, choice, pending, error, onKeep }: Props) {
  // What is typed stays until it is kept, whoever keeps another choice meanwhile.
  const [typed, setTyped] = useState<TeethDraft | null>(null);
  const draft = useMemo(() => typed ?? draftOf(choice), [typed, choice]);
  const [tried, setTried] = useState(false);
  const teeth = useMemo(() => teethOf(view, body, measuredOf(draft)), [view, body, draft]);
  const lists = { arrangement: choice.list.arrangements, shade: choice.list.shades, mould: choice.list.moulds };
  const listId = useId();
  const read = readTeeth(draft);
  const type = (part: Partial<TeethDraft>): void => {
    setTyped({ ...draft, ...part });
  };
  return (
    <div className="stack">
      <p className="soft">{words.summary}</p>
      {teeth.targets.length > 0 ? <RangesPicture targets={teeth.targets} /> : null}
      {teeth.rows.length > 0 ? (
        <PlainTable
          label={words.picture}
          columns={words.columns}
          rows={teeth.rows.map(({ id, relation, cells }) => ({ id, head: relation, cells }))}
        />
      ) : (
        <p className="soft">{words.empty}</p>
      )}
      {teeth.note === null ? null : <p className="small soft">{teeth.note}</p>}
      <MeasuredTeeth
        widths={draft.measured}
        errors={{ ...fieldErrors(error), ...(tried ? read.errors : {}) }}
        onChange={(measured) => {
          type({ measured });
        }}
      />
      <Textarea
        label={words.wish}
        description={words.wishHint}
        maxLength={1000}
        value={draft.wish}
        onChange={(event) => {
          type({ wish: event.currentTarget.value });
        }}
      />
      <div className="capture-boxes">
        {CHOSEN.map((name) => (
          <div key={name}>
            <TextInput
              label={words[name]}
              maxLength={name === 'arrangement' ? 120 : 60}
              list={`${listId}-${name}`}
              value={draft[name]}
              onChange={(event) => {
                type({ [name]: event.currentTarget.value });
              }}
            />
            <datalist id={`${listId}-${name}`}>
              {lists[name].map((word) => (
                <option key={word} value={word} />
              ))}
            </datalist>
          </div>
        ))}
        <NativeSelect
          label={words.decidedBy}
          value={draft.decidedBy}
          data={words.deciders}
          onChange={(event) => {
            type({ decidedBy: event.currentTarget.value });
          }}
        />
      </div>
      <Refusal error={error} />
      <div className="row">
        <Button
          loading={pending}
          onClick={() => {
            setTried(true);
            if (read.body === null) return;
            onKeep(read.body, () => {
              setTyped(null);
              setTried(false);
            });
          }}
        >
          {words.save}
        </Button>
      </div>
      {choice.recordedAt === null ? null : (
        <Notice tone="go">
          {words.kept(dateAndTime(choice.recordedAt, view.zone, today), choice.recordedBy ?? '')}
        </Notice>
      )}
      <p className="small soft">{JUDGEMENT_NOTE}</p>
    </div>
  );
}
