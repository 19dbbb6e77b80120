import type { PathLag } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import type { PartEditing, PathEditing } from './editing.js';
import { ChoiceField, FieldError, LimitField, TextField } from './part-fields.js';
import { withLag, withoutLag } from './path-change.js';
import { visitChoices, workChoices } from './path-parts.js';
import { TakeOut } from './take-out.js';

/** How long something may wait, at least and at most. */
export function LagPanel({ editing, lag }: { editing: PathEditing; lag: PathLag }) {
  const { code } = lag;
  const { path } = editing;
  const of: PartEditing = { editing, part: { kind: 'lag', code } };
  return (
    <>
      <TextField
        of={of}
        field="title"
        label={words.fields.title}
        value={lag.title}
        put={(title) => withLag(code, { title })}
      />
      <ChoiceField
        of={of}
        field="from"
        label={words.fields.from}
        value={lag.from}
        choices={workChoices(path)}
        put={(from) => withLag(code, { from })}
      />
      <ChoiceField
        of={of}
        field="to"
        label={words.fields.to}
        value={lag.to}
        choices={visitChoices(path)}
        put={(to) => withLag(code, { to })}
      />
      {(['min', 'max'] as const).map((bound) => (
        <LimitField
          key={bound}
          of={of}
          field={bound}
          label={words.fields[bound]}
          value={lag[bound]}
          put={(limit) => withLag(code, { [bound]: limit })}
        />
      ))}
      <FieldError of={of} field="limits" />
      <TakeOut editing={editing} next={withoutLag(path, code)} />
    </>
  );
}
