import { Button, VisuallyHidden } from '@mantine/core';
import type { PathVisit } from '@archwright/protocol';
import { editorWords as words } from '../words/path-editor.js';
import { cautionChoices, choicesOf } from './choices.js';
import { hasError, type PartEditing, type PathEditing } from './editing.js';
import { ChoiceField, FieldError, NumberField, TextField, TickField, TicksField } from './part-fields.js';
import { PartSection } from './part-section.js';
import { withMinutes, withVisit } from './path-change.js';
import { WHOLE } from './path-parts.js';
import { withAnotherLike, withoutVisit, withVisitAt } from './path-shape.js';
import { VisitAround } from './visit-around.js';
import { CapturesList, ChecklistLines } from './visit-lists.js';

interface Props {
  editing: PathEditing;
  visit: PathVisit;
}

/** Everything that a path says of one visit. */
export function VisitPanel({ editing, visit }: Props) {
  const { code, chairMinutes } = visit;
  const of: PartEditing = { editing, part: { kind: 'visit', code } };
  const minutes = (['min', 'typical', 'max'] as const).map((field) => (
    <NumberField
      key={field}
      of={of}
      field={`chairMinutes.${field}`}
      label={words.fields[field]}
      value={chairMinutes[field]}
      put={(value) => withMinutes(code, { [field]: value })}
    />
  ));
  return (
    <>
      <VisitPlace editing={editing} visit={visit} />
      <TextField
        of={of}
        field="title"
        label={words.fields.title}
        value={visit.title}
        put={(title) => withVisit(code, { title })}
      />
      <fieldset className="stack-tight">
        <legend>{words.fields.chairMinutes}</legend>
        <div className="row path-numbers">{minutes}</div>
        <FieldError of={of} field="chairMinutes" />
      </fieldset>
      <PartSection
        title={words.titled(words.fields.checklist, visit.checklist.length)}
        startsOpen
        hasFault={hasError(of, ['checklist'])}
      >
        <ChecklistLines of={of} visit={visit} />
      </PartSection>
      <PartSection
        title={words.titled(words.fields.captures, visit.captures.length)}
        hasFault={hasError(of, ['captures'])}
      >
        <CapturesList of={of} visit={visit} />
      </PartSection>
      <PartSection
        title={words.titled(words.fields.cautions, visit.cautions.length)}
        hasFault={hasError(of, ['cautions'])}
      >
        <TicksField
          of={of}
          field="cautions"
          label={words.fields.cautions}
          isTitled
          value={visit.cautions}
          choices={cautionChoices}
          put={(cautions) => withVisit(code, { cautions: [...cautions] })}
        />
      </PartSection>
      <VisitAround of={of} code={code} />
      <VisitNeeds of={of} visit={visit} />
    </>
  );
}

/** Where the visit stands in the order: moved, copied, taken out. */
function VisitPlace({ editing, visit: { code } }: Props) {
  const { path, change, choose } = editing;
  const place = path.visits.findIndex((each) => each.code === code);
  return (
    <div className="row">
      <Button
        variant="default"
        disabled={place === 0}
        onClick={() => {
          change(withVisitAt(path, code, place - 1));
        }}
      >
        {words.earlier}
      </Button>
      <Button
        variant="default"
        disabled={place === path.visits.length - 1}
        onClick={() => {
          change(withVisitAt(path, code, place + 1));
        }}
      >
        {words.later}
      </Button>
      <Button
        variant="default"
        onClick={() => {
          const added = withAnotherLike(path, code);
          change(added.path);
          choose({ kind: 'visit', code: added.code });
        }}
      >
        {words.another}
      </Button>
      <Button
        variant="default"
        disabled={path.visits.length === 1}
        onClick={() => {
          const next = withoutVisit(path, code);
          const neighbour = next.visits[Math.max(0, place - 1)];
          change(next);
          choose(neighbour === undefined ? WHOLE : { kind: 'visit', code: neighbour.code });
        }}
      >
        {words.takeOut.visit}
      </Button>
      <VisuallyHidden role="status">{words.standsAt(code, place + 1, path.visits.length)}</VisuallyHidden>
    </div>
  );
}

/** Who and what the visit needs, and what kind of visit it is. */
function VisitNeeds({ of, visit }: { of: PartEditing; visit: PathVisit }) {
  const { code } = visit;
  const tick = (field: 'assistant' | 'mayTravel' | 'isDelivery' | 'isReview' | 'chained', hint?: string) => (
    <TickField
      of={of}
      label={words.fields[field]}
      {...(hint === undefined ? {} : { hint })}
      value={visit[field]}
      put={(value) => withVisit(code, { [field]: value })}
    />
  );
  return (
    <PartSection
      title={words.more}
      hasFault={hasError(of, ['joins', 'chairMinutes.singleArchFactor', 'skills', 'kits'])}
    >
      <ChoiceField
        of={of}
        field="milestone"
        label={words.fields.milestone}
        value={visit.milestone}
        choices={choicesOf(words.milestones)}
        put={(milestone) => withVisit(code, { milestone: milestone as PathVisit['milestone'] })}
      />
      <TicksField
        of={of}
        field="skills"
        label={words.fields.skills}
        value={visit.skills}
        choices={of.editing.skills}
        put={(skills) => withVisit(code, { skills: [...skills] })}
      />
      <TicksField
        of={of}
        field="kits"
        label={words.fields.kits}
        value={visit.kits}
        choices={of.editing.kits}
        put={(kits) => withVisit(code, { kits: [...kits] })}
      />
      {tick('assistant')}
      {tick('mayTravel')}
      {tick('isDelivery')}
      {tick('isReview')}
      {tick('chained', words.hints.chained)}
      <ChoiceField
        of={of}
        field="pointOfNoReturn"
        label={words.fields.pointOfNoReturn}
        value={visit.pointOfNoReturn ?? ''}
        choices={choicesOf(words.noReturn)}
        hasNone
        put={(kind) => withVisit(code, { pointOfNoReturn: kind === '' ? null : (kind as keyof typeof words.noReturn) })}
      />
      <TextField
        of={of}
        field="joins"
        label={words.fields.joins}
        hint={words.hints.slug}
        value={visit.joins ?? ''}
        put={(joins) => withVisit(code, { joins: joins === '' ? null : joins })}
      />
      <NumberField
        of={of}
        field="chairMinutes.singleArchFactor"
        label={words.fields.singleArchFactor}
        value={visit.chairMinutes.singleArchFactor}
        put={(singleArchFactor) => withMinutes(code, { singleArchFactor })}
      />
    </PartSection>
  );
}
