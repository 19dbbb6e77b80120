import { Button, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import { editorWords as words } from '../words/path-editor.js';
import type { PathEditing } from './editing.js';
import { freeTriggers } from './loop-choices.js';
import { withLoopAt } from './path-change.js';

/** Adds a way back for what a check can find and the path has none for yet. */
export function LoopStart({ editing, at }: { editing: PathEditing; at: string }) {
  const free = freeTriggers(editing.path);
  const [asked, setAsked] = useState('');
  const chosen = free.find(({ value }) => value === asked) ?? free[0];
  if (chosen === undefined) return null;
  return (
    <div className="row row-end">
      <NativeSelect
        label={words.whichTrigger}
        data={free}
        value={chosen.value}
        onChange={(event) => {
          setAsked(event.currentTarget.value);
        }}
      />
      <Button
        variant="default"
        onClick={() => {
          const added = withLoopAt(editing.path, at, { code: chosen.value, trigger: chosen.label });
          editing.change(added.path);
          editing.choose({ kind: 'loop', code: added.code });
        }}
      >
        {words.add.loop}
      </Button>
    </div>
  );
}
