import { LOOP_TRIGGERS } from '@archwright/measures';
import type { PathLoop } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import { choicesOf } from './choices.js';
import { hasError, type PartEditing, type PathEditing } from './editing.js';
import { otherLoops, remedyOf, returnChoices } from './loop-choices.js';
import { ChoiceField, NumberField, TextField, TicksField } from './part-fields.js';
import { PartSection } from './part-section.js';
import { withExtra, withLoop, withoutLoop } from './path-change.js';
import { objectChoices, workChoices } from './path-parts.js';
import { TakeOut } from './take-out.js';

/** What happens to a case when something is found at a visit or a bench. */
export function LoopPanel({ editing, loop }: { editing: PathEditing; loop: PathLoop }) {
  const { code, remedy } = loop;
  const { path } = editing;
  const of: PartEditing = { editing, part: { kind: 'loop', code } };
  const isTrigger = LOOP_TRIGGERS.some((trigger) => trigger === code);
  return (
    <>
      <TextField
        of={of}
        field="trigger"
        label={words.fields.trigger}
        {...(isTrigger ? { hint: words.hints.trigger(words.triggers[code as keyof typeof words.triggers]) } : {})}
        value={loop.trigger}
        isLong
        put={(trigger) => withLoop(code, { trigger })}
      />
      <ChoiceField
        of={of}
        field={remedy.kind === 'return' ? 'remedy.kind' : 'remedy'}
        label={words.fields.remedy}
        value={remedy.kind}
        choices={choicesOf(words.remedies)}
        put={(kind) => withLoop(code, { remedy: remedyOf(kind as PathLoop['remedy']['kind'], loop) })}
      />
      {remedy.kind === 'return' ? (
        <ChoiceField
          of={of}
          field="remedy"
          label={words.returnTo}
          value={remedy.to}
          choices={returnChoices(path, loop)}
          put={(to) => withLoop(code, { remedy: { kind: 'return', to } })}
        />
      ) : null}
      {remedy.kind === 'repeat-in-visit' ? (
        <div className="row path-numbers">
          {(['tries', 'minutesEach'] as const).map((field) => (
            <NumberField
              key={field}
              of={of}
              field={`remedy.${field}`}
              label={words.fields[field]}
              value={remedy[field]}
              put={(value) => withLoop(code, { remedy: { ...remedy, [field]: value } })}
            />
          ))}
        </div>
      ) : null}
      <ChoiceField
        of={of}
        field="otherwise"
        label={words.fields.otherwise}
        value={loop.otherwise ?? ''}
        choices={otherLoops(path, code)}
        hasNone
        put={(otherwise) => withLoop(code, { otherwise: otherwise === '' ? null : otherwise })}
      />
      <PartSection title={words.titled(words.fields.discards, loop.discards.length)} startsOpen>
        <TicksField
          of={of}
          field="discards"
          label={words.fields.discards}
          isTitled
          value={loop.discards}
          choices={objectChoices(path)}
          put={(discards) => withLoop(code, { discards: [...discards] })}
        />
      </PartSection>
      <PartSection title={words.titled(words.fields.foundAt, loop.foundAt.length)} hasFault={hasError(of, ['foundAt'])}>
        <TicksField
          of={of}
          field="foundAt"
          label={words.fields.foundAt}
          isTitled
          value={loop.foundAt}
          choices={workChoices(path)}
          put={(foundAt) => withLoop(code, { foundAt: [...foundAt] })}
        />
      </PartSection>
      <PartSection title={words.fields.extra} hasFault={hasError(of, ['extra'])}>
        <div className="row path-numbers">
          {(['visitsMin', 'visitsMax', 'labWorkingDaysMin', 'labWorkingDaysMax'] as const).map((field) => (
            <NumberField
              key={field}
              of={of}
              field={`extra.${field}`}
              label={words.fields[field]}
              value={loop.extra[field]}
              put={(value) => withExtra(code, { [field]: value })}
            />
          ))}
        </div>
      </PartSection>
      <TakeOut editing={editing} next={withoutLoop(path, code)} />
    </>
  );
}
