import { Button } from '@mantine/core';
import type { TreatmentPath } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import type { PathEditing } from './editing.js';
import { WHOLE } from './path-parts.js';

interface Props {
  editing: PathEditing;
  /** The path without the part. */
  next: TreatmentPath;
  label?: string;
}

/** Takes the open part out; undoing brings it back. */
export function TakeOut({ editing, next, label = words.takeOut.other }: Props) {
  return (
    <div>
      <Button
        variant="default"
        onClick={() => {
          editing.change(next);
          editing.choose(WHOLE);
        }}
      >
        {label}
      </Button>
    </div>
  );
}
