import type { StageView, StateBearingScrew } from '@archwright/contracts';
import { JUDGEMENT_NOTE } from '@archwright/measures';
import { useMemo } from 'react';
import { Notice } from '../look/notice.js';
import { PlainTable } from '../look/plain-table.js';
import type { Judged } from '../stage/finding-view.js';
import { verticalWords as words } from '../words/vertical.js';
import { ScrewForm } from './screw-form.js';
import { SibilantPrompt } from './sibilant-prompt.js';
import { workUpOf, type WorkUpView } from './work-up-view.js';

export interface Props {
  view: StageView;
  judged: Judged;
  pending: boolean;
  error: unknown;
  onScrew: (screw: StateBearingScrew, onSaved: (saved: StageView) => void) => void;
}

/** Every method for the vertical dimension beside the others, over what is saved and what is typed. */
export function VerticalWorkUp({ view, judged, pending, error, onScrew }: Props) {
  const workUp = useMemo(() => workUpOf(view, judged), [view, judged]);
  return (
    <div className="stack">
      <p className="soft">{words.summary}</p>
      {'problem' in workUp ? <Notice tone="caution">{workUp.problem}</Notice> : <Methods workUp={workUp} />}
      <SibilantPrompt />
      {view.tracingKit ? (
        <ScrewForm
          stageId={view.id}
          kit={view.tracingKit}
          pending={pending}
          error={error}
          onSave={(screw, onSaved) => {
            onScrew(screw, ({ tracingKit }) => {
              if (tracingKit) onSaved(tracingKit);
            });
          }}
        />
      ) : null}
      <p className="small soft">{JUDGEMENT_NOTE}</p>
    </div>
  );
}

function Methods({ workUp }: { workUp: WorkUpView }) {
  const { bases, rows, note, correction } = workUp;
  return (
    <>
      <Notice tone={bases === 'stable' ? 'go' : 'caution'}>{words.bases[bases]}</Notice>
      <PlainTable
        label={words.title}
        columns={words.columns}
        rows={rows.map(({ code, name, value, says, weakness, source }) => ({
          id: code,
          head: name,
          cells: [value, words.says[says], weakness, source],
        }))}
      />
      {correction === null ? null : (
        <div className="stack-tight">
          <p className="strong">{correction.sentence}</p>
          {correction.against === null ? null : <p>{correction.against}</p>}
          {correction.steps.length === 0 ? null : (
            <>
              <h3>{words.steps}</h3>
              <ol className="saved-attempts">
                {correction.steps.map((step) => (
                  <li key={step}>{step}</li>
                ))}
              </ol>
              <p className="capture-caution">▲ {words.overstated}</p>
            </>
          )}
          <h3>{words.repeat}</h3>
          <ul className="bullets">
            {correction.repeat.map((what) => (
              <li key={what}>{what}</li>
            ))}
          </ul>
        </div>
      )}
      <p>{note}</p>
    </>
  );
}
