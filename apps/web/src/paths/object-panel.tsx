import type { PathObject } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import type { PartEditing, PathEditing } from './editing.js';
import { ChoiceField, TextField, TickField } from './part-fields.js';
import { withObject, withoutObject } from './path-change.js';
import { workChoices } from './path-parts.js';
import { TakeOut } from './take-out.js';

/** Something that is made on the way: an impression, a cast, a record, the denture. */
export function ObjectPanel({ editing, object }: { editing: PathEditing; object: PathObject }) {
  const { code } = object;
  const { path } = editing;
  const of: PartEditing = { editing, part: { kind: 'object', code } };
  return (
    <>
      <TextField
        of={of}
        field="title"
        label={words.fields.title}
        value={object.title}
        put={(title) => withObject(code, { title })}
      />
      <ChoiceField
        of={of}
        field="madeAt"
        label={words.fields.madeAt}
        value={object.madeAt}
        choices={[{ value: 'before-case', label: words.beforeCase }, ...workChoices(path)]}
        put={(madeAt) => withObject(code, { madeAt })}
      />
      <TickField
        of={of}
        label={words.fields.shared}
        value={object.shared}
        put={(shared) => withObject(code, { shared })}
      />
      <TakeOut editing={editing} next={withoutObject(path, code)} />
    </>
  );
}
