import type { PathVisit } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import { errorOf, type PartEditing } from './editing.js';
import { captureChoices, captureName } from './measured.js';
import { ChoiceField, TextField, TickField } from './part-fields.js';
import { movedTo, PartList, replacedAt, withoutAt } from './part-list.js';
import { freshCode, withVisit } from './path-change.js';

interface Props {
  of: PartEditing;
  visit: PathVisit;
}

/** What is ticked or counted at a visit. A gate that asks for a line that is taken out is named as a fault. */
export function ChecklistLines({ of, visit: { code, checklist } }: Props) {
  const put = (lines: PathVisit['checklist']) => withVisit(code, { checklist: lines });
  const apply = (lines: PathVisit['checklist']): void => {
    of.editing.change(put(lines)(of.editing.path));
  };
  return (
    <PartList
      label={words.fields.checklist}
      names={checklist.map(({ text }, index) => text || words.list.numbered(words.fields.text, index + 1))}
      error={errorOf(of, 'checklist')}
      onMove={(from, to) => {
        apply(movedTo(checklist, from, to));
      }}
      onRemove={(index) => {
        apply(withoutAt(checklist, index));
      }}
      add={{
        label: words.add.line,
        onAdd: () => {
          apply([...checklist, { code: freshCode(checklist, 'own-line'), text: '', counted: false }]);
        },
      }}
    >
      {(index) => {
        const line = checklist[index];
        if (line === undefined) return null;
        return (
          <>
            <TextField
              of={of}
              field={`checklist.${String(index)}.text`}
              label={words.list.numbered(words.fields.text, index + 1)}
              value={line.text}
              put={(text) => put(replacedAt(checklist, index, { ...line, text }))}
            />
            <TickField
              of={of}
              label={words.fields.counted}
              value={line.counted}
              put={(counted) => put(replacedAt(checklist, index, { ...line, counted }))}
            />
          </>
        );
      }}
    </PartList>
  );
}

/** What is measured or found at a visit. */
export function CapturesList({ of, visit: { code, captures } }: Props) {
  const put = (lines: PathVisit['captures']) => withVisit(code, { captures: lines });
  const apply = (lines: PathVisit['captures']): void => {
    of.editing.change(put(lines)(of.editing.path));
  };
  const free = captureChoices().filter(({ value }) => captures.every((each) => each.code !== value));
  const [first] = free;
  return (
    <PartList
      label={words.fields.captures}
      names={captures.map((each) => captureName(each.code))}
      onMove={(from, to) => {
        apply(movedTo(captures, from, to));
      }}
      onRemove={(index) => {
        apply(withoutAt(captures, index));
      }}
      {...(first === undefined
        ? {}
        : {
            add: {
              label: words.add.capture,
              onAdd: () => {
                apply([...captures, { code: first.value, perArch: false, required: true }]);
              },
            },
          })}
    >
      {(index) => {
        const line = captures[index];
        if (line === undefined) return null;
        const own = { value: line.code, label: captureName(line.code) };
        return (
          <>
            <ChoiceField
              of={of}
              field={`captures.${String(index)}.code`}
              label={words.list.numbered(words.fields.captures, index + 1)}
              value={line.code}
              choices={[own, ...free]}
              put={(chosen) => put(replacedAt(captures, index, { ...line, code: chosen }))}
            />
            <div className="row ticks">
              {(['perArch', 'required'] as const).map((field) => (
                <TickField
                  key={field}
                  of={of}
                  label={words.fields[field]}
                  value={line[field]}
                  put={(value) => put(replacedAt(captures, index, { ...line, [field]: value }))}
                />
              ))}
            </div>
          </>
        );
      }}
    </PartList>
  );
}
