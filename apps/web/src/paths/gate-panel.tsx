import type { GateRequirement, PathGate } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import { errorOf, type PartEditing, type PathEditing } from './editing.js';
import {
  guardedChoices,
  guardedKey,
  guardedOf,
  requirementChoices,
  requirementKey,
  requirementKinds,
  requirementObject,
  requirementsOf,
  type RequirementKind,
} from './gate-choices.js';
import { ChoiceField, TextField, TickField } from './part-fields.js';
import { movedTo, PartList, replacedAt, withoutAt } from './part-list.js';
import { TakeOut } from './take-out.js';
import { withGate, withoutGate } from './path-change.js';

/** What may not happen before something is there. */
export function GatePanel({ editing, gate }: { editing: PathEditing; gate: PathGate }) {
  const { code, requires } = gate;
  const { path } = editing;
  const of: PartEditing = { editing, part: { kind: 'gate', code } };
  const kinds = requirementKinds(path);
  const put = (lines: GateRequirement[]) => withGate(code, { requires: lines });
  const apply = (lines: GateRequirement[]): void => {
    editing.change(put(lines)(path));
  };
  const first = (kind: RequirementKind): GateRequirement[] => requirementsOf(path, kind).slice(0, 1);
  return (
    <>
      <TextField
        of={of}
        field="title"
        label={words.fields.title}
        value={gate.title}
        put={(title) => withGate(code, { title })}
      />
      <ChoiceField
        of={of}
        field="before"
        label={words.fields.before}
        value={guardedKey(gate.before)}
        choices={guardedChoices(path)}
        put={(key) => withGate(code, { before: guardedOf(key) })}
      />
      <fieldset className="stack-tight">
        <legend>{words.fields.requires}</legend>
        <PartList
          label={words.fields.requires}
          names={requires.map((each) => words.asked(words.requirementKinds[each.kind], requirementObject(path, each)))}
          error={errorOf(of, 'requires')}
          onMove={(from, to) => {
            apply(movedTo(requires, from, to));
          }}
          onRemove={(index) => {
            apply(withoutAt(requires, index));
          }}
          add={{
            label: words.add.requirement,
            onAdd: () => {
              apply([...requires, ...first(kinds[0] ?? 'case-record')]);
            },
          }}
        >
          {(index) => {
            const each = requires[index];
            if (each === undefined) return null;
            const choices = requirementChoices(path, each);
            return (
              <>
                <ChoiceField
                  of={of}
                  field={`requires.${String(index)}.kind`}
                  label={words.list.numbered(words.fields.requires, index + 1)}
                  value={each.kind}
                  choices={kinds.map((kind) => ({ value: kind, label: words.requirementKinds[kind] }))}
                  put={(kind) =>
                    put(requires.flatMap((other, at) => (at === index ? first(kind as RequirementKind) : [other])))
                  }
                />
                <ChoiceField
                  of={of}
                  field={`requires.${String(index)}`}
                  label={words.list.numbered(words.fields.kind, index + 1)}
                  value={requirementKey(each)}
                  choices={choices}
                  put={(key) => {
                    const chosen = [each, ...requirementsOf(path, each.kind)].find(
                      (one) => requirementKey(one) === key,
                    );
                    return put(replacedAt(requires, index, chosen ?? each));
                  }}
                />
              </>
            );
          }}
        </PartList>
      </fieldset>
      <ChoiceField
        of={of}
        field="firmness"
        label={words.fields.firmness}
        value={gate.firmness}
        choices={(['hard', 'soft'] as const).map((value) => ({ value, label: words.firmness[value] }))}
        put={(firmness) => withGate(code, { firmness: firmness === 'hard' ? 'hard' : 'soft' })}
      />
      <TickField
        of={of}
        label={words.fields.overridable}
        value={gate.overridable}
        put={(overridable) => withGate(code, { overridable })}
      />
      <TakeOut editing={editing} next={withoutGate(path, code)} />
    </>
  );
}
