import type { RecordCapture, StageView } from '@archwright/contracts';
import { useCallback, useLayoutEffect, useMemo, useRef, useState, type SyntheticEvent } from 'react';
import { ClashSheet } from '../look/clash-sheet.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Notice, Refusal } from '../look/notice.js';
import { isOutrun, Outrun } from '../look/outrun.js';
import { stageWords as words } from '../words/chair.js';
import { captureFields, groupsOf, landmarkOptions, type FieldEntry } from './capture-boxes.js';
import { CaptureField, CheckLine } from './capture-field.js';
import type { ReadDraft } from './capture-view.js';
import { centricInWords } from './centric-view.js';
import { DeviceChoice } from './device-choice.js';
import { chosenDevices, withDevices, type ChosenDevices } from './devices-view.js';
import type { Findings } from './finding-view.js';
import { LiveBar } from './live-bar.js';
import { TracingFields } from './tracing-fields.js';
import { conditionsOf, drawnOf, tracingInWords } from './tracing-view.js';
import type { StageDraft } from './use-draft.js';
import { isClosed, judgesJawRelation } from './visit-steps.js';

interface Props {
  view: StageView;
  draft: StageDraft;
  read: ReadDraft;
  /** What the checks would say to what is typed; null when nothing is. */
  live: Findings | null;
  pending: boolean;
  error: unknown;
  onSave: (body: RecordCapture, onSaved: (saved: StageView) => void) => void;
}

/** Box of the record that the injury risk of the tracing set was explained. */
const RISK_EXPLAINED = 'tracing-risk-explained||||0';

/** Checklist, measurements and tracings of the stage. What is typed stays until it is saved or given up. */
export function CaptureForm({ view, draft, read, live, pending, error, onSave }: Props) {
  const { typed, type, clashes } = draft;
  const [attempt, setAttempt] = useState(0);
  const [devices, setDevices] = useState<ChosenDevices>({});
  const chosen = chosenDevices(view, devices);
  const errors = attempt > 0 ? read.errors : {};
  const refused = Object.keys(errors).length;
  const form = useFirstProblem(attempt, refused > 0);
  const closed = isClosed(view);
  const fields = useMemo(() => captureFields(view), [view]);
  // The way to type stays the same one, so that a key pressed in one field draws that field alone.
  const latest = useRef(draft);
  useLayoutEffect(() => {
    latest.current = draft;
  });
  const typeBox = useCallback((key: string, value: string) => {
    const now = latest.current;
    now.type({ values: { ...now.typed.values, [key]: value } });
  }, []);
  const needed = fields.filter(({ required }) => required);
  const others = fields.filter(({ required }) => !required);

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (Object.keys(read.errors).length > 0 || !read.isChanged || clashes.length > 0) return;
    const settle = draft.hold();
    onSave(withDevices(view, read.body, chosen), (saved) => {
      settle(saved);
      setAttempt(0);
    });
  }
  const draw = (list: readonly FieldEntry[]) => (
    <div className="capture-grid">
      {list.map((field) => (
        <CaptureField key={field.code} field={field} values={typed.values} errors={errors} onChange={typeBox} />
      ))}
    </div>
  );

  return (
    <form ref={form} onSubmit={submit} noValidate>
      <fieldset className="stack" disabled={closed}>
        {view.checklist.length > 0 ? (
          <section className="sheet sheet-pad stack-none" aria-labelledby="checklist">
            <h2 id="checklist">{words.checklist}</h2>
            {view.checklist.map((line) => (
              <CheckLine
                key={line.code}
                text={line.text}
                counted={line.counted}
                done={typed.ticks[line.code] ?? false}
                count={typed.counts[line.code] ?? ''}
                error={errors[`checklist|${line.code}`]}
                onTick={(done) => {
                  type({ ticks: { ...typed.ticks, [line.code]: done } });
                }}
                onCount={(count) => {
                  type({ counts: { ...typed.counts, [line.code]: count } });
                }}
              />
            ))}
          </section>
        ) : null}
        <section className="sheet sheet-pad stack" aria-labelledby="capture">
          <h2 id="capture">{words.capture}</h2>
          {fields.length === 0 ? <p className="soft">{words.nothingToMeasure}</p> : null}
          <DeviceChoice
            devices={view.devices}
            chosen={chosen}
            onChoose={(measures, id) => {
              setDevices({ ...devices, [measures]: id });
            }}
          />
          {draw(needed)}
          {others.length > 0 ? (
            <section className="stack-tight" aria-labelledby="others">
              <h3 id="others">{words.othersTitle}</h3>
              {groupsOf(others).map(({ group, fields: own }) => (
                <details key={group} className="details" open={isTouched(own, typed.values) ? true : undefined}>
                  <summary>{words.others(group, own.length)}</summary>
                  {draw(own)}
                </details>
              ))}
            </section>
          ) : null}
          {judgesJawRelation(view) ? (
            <TracingFields
              saved={[...view.tracings.map(tracingInWords), ...view.otherCentricRelation.map(centricInWords)]}
              attempts={{ stageId: view.id, saved: view.tracings, drawn: typed.tracings.flatMap(drawnOf) }}
              isRiskExplained={typed.values[RISK_EXPLAINED] === 'true'}
              tracings={typed.tracings}
              centric={typed.centric}
              last={view.tracings.map(conditionsOf).at(-1)}
              errors={errors}
              landmarks={landmarkOptions(view)}
              onTracings={(tracings) => {
                type({ tracings });
              }}
              onCentric={(centric) => {
                type({ centric });
              }}
            />
          ) : null}
        </section>
        {refused > 0 ? <Notice tone="stop">{words.problems(refused)}</Notice> : null}
        <ClashSheet rows={clashes} onKeepMine={draft.keepMine} onTakeTheirs={draft.takeTheirs} />
        {clashes.length === 0 ? <Outrun error={error} /> : null}
        <Refusal error={isOutrun(error) ? null : error} />
        {closed ? null : (
          <LiveBar
            live={live}
            pending={pending}
            onDiscard={() => {
              draft.discard();
              setAttempt(0);
            }}
          />
        )}
      </fieldset>
    </form>
  );
}

const isTouched = (fields: readonly FieldEntry[], values: Record<string, string>): boolean =>
  fields.some(({ entries }) => entries.some(({ key }) => (values[key] ?? '') !== ''));
