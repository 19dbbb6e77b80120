import { Button, NativeSelect } from '@mantine/core';
import type { SetupView } from '@archwright/contracts';
import type { TreatmentPath } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import type { PathEditing } from './editing.js';
import { meansToChoose } from './means-choices.js';
import { PartPanel } from './part-panel.js';
import type { DraftFault } from './path-draft.js';
import { PathDrawing } from './path-drawing.js';
import { hasPart, keyOf, partGroups, partOfKey, WHOLE, type PartRef } from './path-parts.js';
import { withVisitAt } from './path-shape.js';

interface Props {
  path: TreatmentPath;
  faults: readonly DraftFault[];
  setup: SetupView | undefined;
  /** The part that is open, and how often somebody went to one. */
  open: { part: PartRef; visits: number };
  onChoose: (part: PartRef, goesThere: boolean) => void;
  onChange: (next: TreatmentPath, typedIn?: string) => void;
  /** Null while there is nothing to take back. */
  onUndo: (() => void) | null;
}

/** The drawing of a path, and beside it the part that is chosen there or in the list of parts. */
export function PathEditor({ path, faults, setup, open, onChoose, onChange, onUndo }: Props) {
  const chosen = hasPart(path, open.part) ? open.part : WHOLE;
  const editing: PathEditing = {
    path,
    faults,
    ...meansToChoose(path, setup),
    change: onChange,
    choose: (part) => {
      onChoose(part, true);
    },
  };
  function put(code: string, at: number): void {
    const next = withVisitAt(path, code, at);
    if (next.visits.some((visit, index) => visit !== path.visits[index])) onChange(next);
  }
  return (
    <section className="stack-tight roomy" aria-labelledby="editor">
      <h2 id="editor">{words.title}</h2>
      <p className="small soft">{words.hint}</p>
      <div className="row row-end">
        <NativeSelect
          label={words.parts}
          value={keyOf(chosen)}
          data={partGroups(path).map(({ kind, parts }) => ({ group: words.plurals[kind], items: parts }))}
          onChange={(event) => {
            onChoose(partOfKey(event.currentTarget.value), false);
          }}
        />
        <Button variant="default" disabled={onUndo === null} onClick={() => onUndo?.()}>
          {words.undo}
        </Button>
      </div>
      <div className="path-editor">
        <PathDrawing path={path} faults={faults} chosen={chosen} onChoose={onChoose} onPut={put} />
        <PartPanel key={keyOf(chosen)} editing={editing} part={chosen} visits={open.visits} />
      </div>
    </section>
  );
}
