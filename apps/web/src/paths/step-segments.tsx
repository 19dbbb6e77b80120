import type { PathLabStep, StepSegment } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import { choicesOf } from './choices.js';
import { errorOf, type PartEditing } from './editing.js';
import { ChoiceField, NumberField, TickField } from './part-fields.js';
import { movedTo, PartList, replacedAt, withoutAt } from './part-list.js';
import { withStep } from './path-change.js';

/** What a step is made of: hands at work, setting, a machine alone. */
export function SegmentLines({ of, step: { code, segments } }: { of: PartEditing; step: PathLabStep }) {
  const put = (lines: StepSegment[]) => withStep(code, { segments: lines });
  const apply = (lines: StepSegment[]): void => {
    of.editing.change(put(lines)(of.editing.path));
  };
  return (
    <PartList
      label={words.fields.segments}
      names={segments.map(({ kind }, index) => words.list.numbered(words.segments[kind], index + 1))}
      error={errorOf(of, 'segments')}
      onMove={(from, to) => {
        apply(movedTo(segments, from, to));
      }}
      onRemove={(index) => {
        apply(withoutAt(segments, index));
      }}
      add={{
        label: words.add.segment,
        onAdd: () => {
          apply([...segments, { kind: 'hands-on', minutes: 30, holdsPlace: true }]);
        },
      }}
    >
      {(index) => {
        const line = segments[index];
        if (line === undefined) return null;
        const at = `segments.${String(index)}`;
        return (
          <>
            <div className="row row-end path-numbers">
              <ChoiceField
                of={of}
                field={`${at}.kind`}
                label={words.list.numbered(words.fields.kind, index + 1)}
                value={line.kind}
                choices={choicesOf(words.segments)}
                put={(kind) => put(replacedAt(segments, index, { ...line, kind: kind as StepSegment['kind'] }))}
              />
              <NumberField
                of={of}
                field={`${at}.minutes`}
                label={words.list.numbered(words.fields.minutes, index + 1)}
                value={line.minutes}
                put={(minutes) => put(replacedAt(segments, index, { ...line, minutes }))}
              />
            </div>
            <TickField
              of={of}
              label={words.fields.holdsPlace}
              value={line.holdsPlace}
              put={(holdsPlace) => put(replacedAt(segments, index, { ...line, holdsPlace }))}
            />
          </>
        );
      }}
    </PartList>
  );
}
