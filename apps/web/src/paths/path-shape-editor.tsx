import { Button, NativeSelect, VisuallyHidden } from '@mantine/core';
import type { TreatmentPath } from '@archwright/protocol';
import { useState } from 'react';
import { pathWords as words } from '../words/paths.js';
import { PathDrawing } from './path-drawing.js';
import { withAnotherLike, withoutVisit, withVisitAt } from './path-shape.js';

interface Props {
  path: TreatmentPath;
  onChange: (path: TreatmentPath) => void;
}

/** The order of the visits: dragged along the line, or changed by the buttons below it for the visit that is chosen. */
export function PathShapeEditor({ path, onChange }: Props) {
  const [asked, setAsked] = useState<string | null>(null);
  const [before, setBefore] = useState<readonly TreatmentPath[]>([]);
  const chosen = path.visits.find(({ code }) => code === asked) ?? path.visits[0];
  const place = path.visits.findIndex((visit) => visit === chosen);
  const undone = before.at(-1);

  function change(next: TreatmentPath): void {
    setBefore([...before, path]);
    onChange(next);
  }
  function put(code: string, at: number): void {
    setAsked(code);
    const next = withVisitAt(path, code, at);
    if (next.visits.some((visit, index) => visit !== path.visits[index])) change(next);
  }
  if (chosen === undefined) return null;
  return (
    <section className="stack-tight" aria-labelledby="shape">
      <h2 id="shape">{words.shape.title}</h2>
      <p className="small soft">{words.shape.hint}</p>
      <PathDrawing path={path} chosen={chosen.code} onPut={put} />
      <div className="row row-end">
        <NativeSelect
          label={words.kinds.visit}
          value={chosen.code}
          data={path.visits.map(({ code, title }) => ({ value: code, label: words.shape.visitOf(code, title) }))}
          onChange={(event) => {
            setAsked(event.currentTarget.value);
          }}
        />
        <Button
          variant="default"
          disabled={place === 0}
          onClick={() => {
            put(chosen.code, place - 1);
          }}
        >
          {words.shape.earlier}
        </Button>
        <Button
          variant="default"
          disabled={place === path.visits.length - 1}
          onClick={() => {
            put(chosen.code, place + 1);
          }}
        >
          {words.shape.later}
        </Button>
        <Button
          variant="default"
          onClick={() => {
            const added = withAnotherLike(path, chosen.code);
            setAsked(added.code);
            change(added.path);
          }}
        >
          {words.shape.another}
        </Button>
        <Button
          variant="default"
          disabled={path.visits.length === 1}
          onClick={() => {
            change(withoutVisit(path, chosen.code));
          }}
        >
          {words.shape.takeOut}
        </Button>
        <Button
          variant="subtle"
          disabled={undone === undefined}
          onClick={() => {
            if (undone === undefined) return;
            setBefore(before.slice(0, -1));
            onChange(undone);
          }}
        >
          {words.shape.undo}
        </Button>
      </div>
      <VisuallyHidden role="status">
        {asked === null ? '' : words.shape.standsAt(chosen.code, place + 1, path.visits.length)}
      </VisuallyHidden>
    </section>
  );
}
