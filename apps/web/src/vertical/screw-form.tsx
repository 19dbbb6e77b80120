import { Button, NativeSelect, TextInput } from '@mantine/core';
import type { StageView, StateBearingScrew } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { useLiveDraft } from '../drafts/use-live-draft.js';
import { ClashSheet } from '../look/clash-sheet.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Refusal } from '../look/notice.js';
import { isOutrun, Outrun } from '../look/outrun.js';
import { verticalWords as words } from '../words/vertical.js';
import { screwKey } from './screw-key.js';
import { draftOfScrew, readScrew, readScrewDraft, screwClashes } from './screw-draft.js';

type Kit = NonNullable<StageView['tracingKit']>;

interface Props {
  stageId: string;
  kit: Kit;
  pending: boolean;
  error: unknown;
  /** @param onSaved hears the set as it was saved */
  onSave: (screw: StateBearingScrew, onSaved: (kit: Kit) => void) => void;
}

/** Pitch and direction of the tracing set's screw: kept with the kit, not with the visit. */
export function ScrewForm({ stageId, kit: { label, screw }, pending, error, onSave }: Props) {
  const form = useLiveDraft(screwKey(stageId, label), draftOfScrew(screw), readScrewDraft);
  const [attempt, setAttempt] = useState(0);
  const { draft, clashes } = form;
  const read = readScrew(draft);
  const isWrong = attempt > 0 && read === null;
  const first = useFirstProblem(attempt, isWrong);

  function save(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (read === null || clashes.length > 0 || pending) return;
    const settle = form.hold();
    onSave({ ...read, instead: screw }, (saved) => {
      settle(draftOfScrew(saved.screw));
      setAttempt(0);
    });
  }

  return (
    <section className="stack-tight" aria-label={words.screw(label)}>
      <h3>{words.screw(label)}</h3>
      <p>{screw === null ? words.screwMissing : words.screwKnown(screw.pitchMmPerTurn, screw.raisesBy)}</p>
      <details className="details" open={screw === null || form.isTyped ? true : undefined}>
        <summary>{words.screwChange}</summary>
        <ClashSheet rows={screwClashes(clashes)} onKeepMine={form.keepMine} onTakeTheirs={form.takeTheirs} />
        <form ref={first} onSubmit={save} noValidate className="row row-end">
          <TextInput
            label={words.pitch}
            inputMode="decimal"
            value={draft.pitch}
            error={isWrong ? words.pitchWanted : null}
            onChange={(event) => {
              form.change({ ...draft, pitch: event.currentTarget.value });
            }}
          />
          <NativeSelect
            label={words.raisesBy}
            value={draft.raisesBy}
            data={words.directions}
            onChange={(event) => {
              const isClockwise = event.currentTarget.value === 'clockwise';
              form.change({ ...draft, raisesBy: isClockwise ? 'clockwise' : 'counter-clockwise' });
            }}
          />
          <Button type="submit" variant="default" loading={pending}>
            {words.screwSave}
          </Button>
        </form>
        {clashes.length === 0 ? <Outrun error={error} /> : null}
        <Refusal error={isOutrun(error) ? null : error} />
      </details>
    </section>
  );
}
