import { Button, NativeSelect, TextInput } from '@mantine/core';
import type { StageView, StateBearingScrew } from '@archwright/contracts';
import { useState } from 'react';
import { useLiveDraft } from '../drafts/use-live-draft.js';
import { ClashSheet } from '../look/clash-sheet.js';
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
  const [tried, setTried] = useState(false);
  const { draft, clashes } = form;
  const read = readScrew(draft);
  return (
    <section className="stack-tight" aria-label={words.screw(label)}>
      <h3>{words.screw(label)}</h3>
      <p>{screw === null ? words.screwMissing : words.screwKnown(screw.pitchMmPerTurn, screw.raisesBy)}</p>
      <details className="details" open={screw === null || form.isTyped ? true : undefined}>
        <summary>{words.screwChange}</summary>
        <ClashSheet rows={screwClashes(clashes)} onKeepMine={form.keepMine} onTakeTheirs={form.takeTheirs} />
        <div className="row row-end">
          <TextInput
            label={words.pitch}
            inputMode="decimal"
            value={draft.pitch}
            error={tried && read === null ? words.pitchWanted : null}
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
          <Button
            variant="default"
            loading={pending}
            onClick={() => {
              setTried(true);
              if (read === null || clashes.length > 0) return;
              const settle = form.hold();
              onSave({ ...read, instead: screw }, (saved) => {
                settle(draftOfScrew(saved.screw));
                setTried(false);
              });
            }}
          >
            {words.screwSave}
          </Button>
        </div>
        {clashes.length === 0 ? <Outrun error={error} /> : null}
        <Refusal error={isOutrun(error) ? null : error} />
      </details>
    </section>
  );
}
