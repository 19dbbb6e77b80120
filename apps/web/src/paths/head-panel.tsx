import type { TreatmentPath } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import { choicesOf } from './choices.js';
import type { PartEditing, PathEditing } from './editing.js';
import { FieldError, TextField, TicksField } from './part-fields.js';
import { WHOLE } from './path-parts.js';

/** What stands at the head of a path. */
export function HeadPanel({ editing }: { editing: PathEditing }) {
  const { path } = editing;
  const of: PartEditing = { editing, part: WHOLE };
  const put = (change: Partial<TreatmentPath>) => (from: TreatmentPath) => ({ ...from, ...change });
  const joined = (field: 'startsAfter' | 'finishedBefore') => (
    <TextField
      of={of}
      field={`opposing.${field}`}
      label={words.fields[field]}
      hint={words.hints.slug}
      value={path.opposing[field] ?? ''}
      put={(name) => put({ opposing: { ...path.opposing, [field]: name === '' ? null : name } })}
    />
  );
  return (
    <>
      <FieldError of={of} field="visits" />
      <TextField
        of={of}
        field="code"
        label={words.fields.code}
        hint={words.hints.code}
        value={path.code}
        put={(code) => put({ code })}
      />
      <TextField of={of} field="title" label={words.fields.title} value={path.title} put={(title) => put({ title })} />
      <TextField
        of={of}
        field="summary"
        label={words.fields.summary}
        value={path.summary}
        isLong
        put={(summary) => put({ summary })}
      />
      <TicksField
        of={of}
        field="arches"
        label={words.fields.arches}
        value={path.arches}
        choices={choicesOf(words.arches)}
        put={(arches) => put({ arches: arches as TreatmentPath['arches'] })}
      />
      {joined('startsAfter')}
      {joined('finishedBefore')}
    </>
  );
}
