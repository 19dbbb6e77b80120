import { Button } from '@mantine/core';
import type { RecordCapture, StageView } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { hasStatus } from '../api/errors.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Conflict, Notice, Refusal } from '../look/notice.js';
import { stageWords as words } from '../words/chair.js';
import { CaptureField, CheckLine } from './capture-field.js';
import { captureFields, draftOfStage, landmarkOptions, readCapture, type CaptureDraft } from './capture-view.js';
import { TracingFields } from './tracing-fields.js';

interface Props {
  view: StageView;
  pending: boolean;
  error: unknown;
  onSave: (body: RecordCapture, done: () => void) => void;
  /** Fetches the newest state after someone else saved. */
  onReload: () => Promise<void>;
}

/** Checklist, measurements and tracings of the stage. What is typed stays until it is saved or given up. */
export function CaptureForm({ view, pending, error, onSave, onReload }: Props) {
  const [typed, setTyped] = useState<CaptureDraft | null>(null);
  const [attempt, setAttempt] = useState(0);
  const draft = typed ?? draftOfStage(view);
  const reading = readCapture(view, draft);
  const errors = attempt > 0 && 'errors' in reading ? reading.errors : {};
  const refused = Object.keys(errors).length;
  const form = useFirstProblem(attempt, refused > 0);
  const fields = captureFields(view);
  const stale = hasStatus(error, 412);

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (!('body' in reading)) return;
    onSave(reading.body, () => {
      setTyped(null);
      setAttempt(0);
    });
  }

  return (
    <form ref={form} className="stack" onSubmit={submit} noValidate>
      {view.checklist.length > 0 ? (
        <section className="sheet sheet-pad stack-none" aria-labelledby="checklist">
          <h2 id="checklist">{words.checklist}</h2>
          {view.checklist.map((line) => (
            <CheckLine
              key={line.code}
              text={line.text}
              counted={line.counted}
              done={draft.ticks[line.code] ?? false}
              count={draft.counts[line.code] ?? ''}
              error={errors[`checklist|${line.code}`]}
              onTick={(done) => {
                setTyped({ ...draft, ticks: { ...draft.ticks, [line.code]: done } });
              }}
              onCount={(count) => {
                setTyped({ ...draft, counts: { ...draft.counts, [line.code]: count } });
              }}
            />
          ))}
        </section>
      ) : null}
      <section className="sheet sheet-pad stack" aria-labelledby="capture">
        <h2 id="capture">{words.capture}</h2>
        {fields.length === 0 ? <p className="soft">{words.nothingToMeasure}</p> : null}
        {fields.map((field) => (
          <CaptureField
            key={field.code}
            field={field}
            values={draft.values}
            errors={errors}
            onChange={(key, value) => {
              setTyped({ ...draft, values: { ...draft.values, [key]: value } });
            }}
          />
        ))}
        <TracingFields
          tracings={draft.tracings}
          centric={draft.centric}
          errors={errors}
          landmarks={landmarkOptions(view)}
          onTracings={(tracings) => {
            setTyped({ ...draft, tracings });
          }}
          onCentric={(centric) => {
            setTyped({ ...draft, centric });
          }}
        />
      </section>
      {refused > 0 ? <Notice tone="stop">{words.problems(refused)}</Notice> : null}
      {stale ? (
        <Conflict
          onKeepMine={() => void onReload()}
          onTakeTheirs={() => {
            void onReload().then(() => {
              setTyped(null);
            });
          }}
        />
      ) : (
        <Refusal error={error} />
      )}
      <div className="stage-save no-print">
        <Button type="submit" size="md" loading={pending}>
          {words.save}
        </Button>
      </div>
    </form>
  );
}
