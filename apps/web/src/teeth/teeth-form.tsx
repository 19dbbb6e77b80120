import { Button, NativeSelect, Textarea, TextInput } from '@mantine/core';
import type { ChooseTeeth, StageView, ToothChoiceView } from '@archwright/contracts';
import { JUDGEMENT_NOTE } from '@archwright/measures';
import { useId, useMemo, useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { useLiveDraft } from '../drafts/use-live-draft.js';
import { ClashSheet } from '../look/clash-sheet.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Notice, Refusal } from '../look/notice.js';
import { isOutrun, Outrun } from '../look/outrun.js';
import { PlainTable } from '../look/plain-table.js';
import type { Judged } from '../stage/finding-view.js';
import { dateAndTime } from '../time/wording.js';
import { teethWords as words } from '../words/teeth.js';
import { MeasuredTeeth } from './measured-teeth.js';
import { RangesPicture } from './ranges-picture.js';
import { draftOf, measuredOf, readTeeth, readTeethDraft, teethClashes, type TeethDraft } from './teeth-draft.js';
import { teethKey } from './teeth-key.js';
import { teethOf } from './teeth-view.js';

interface Props {
  view: StageView;
  judged: Judged;
  today: string;
  choice: ToothChoiceView;
  pending: boolean;
  error: unknown;
  onKeep: (body: ChooseTeeth, onSaved: (saved: ToothChoiceView) => void) => void;
}

const CHOSEN = ['arrangement', 'shade', 'mould'] as const;

export function TeethForm({ view, judged, today, choice, pending, error, onKeep }: Props) {
  const kept = useMemo(() => draftOf(choice), [choice]);
  const form = useLiveDraft(teethKey(view.id), kept, readTeethDraft);
  const { draft, clashes } = form;
  const [attempt, setAttempt] = useState(0);
  const teeth = useMemo(() => teethOf(view, judged, measuredOf(draft)), [view, judged, draft]);
  const lists = { arrangement: choice.list.arrangements, shade: choice.list.shades, mould: choice.list.moulds };
  const listId = useId();
  const read = readTeeth(draft);
  const errors = { ...fieldErrors(error), ...(attempt > 0 ? read.errors : {}) };
  const first = useFirstProblem(attempt, Object.keys(errors).length > 0);
  const type = (part: Partial<TeethDraft>): void => {
    form.change({ ...draft, ...part });
  };

  function keep(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (read.body === null || clashes.length > 0 || pending) return;
    const settle = form.hold();
    onKeep(read.body, (saved) => {
      settle(draftOf(saved));
      setAttempt(0);
    });
  }

  return (
    <form ref={first} onSubmit={keep} noValidate className="stack">
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
        errors={errors}
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
      <ClashSheet rows={teethClashes(clashes)} onKeepMine={form.keepMine} onTakeTheirs={form.takeTheirs} />
      {clashes.length === 0 ? <Outrun error={error} /> : null}
      <Refusal error={isOutrun(error) ? null : error} />
      <div className="row">
        <Button type="submit" loading={pending}>
          {words.save}
        </Button>
      </div>
      {choice.recordedAt === null ? null : (
        <Notice tone="go">
          {words.kept(dateAndTime(choice.recordedAt, view.zone, today), choice.recordedBy ?? '')}
        </Notice>
      )}
      <p className="small soft">{JUDGEMENT_NOTE}</p>
    </form>
  );
}
