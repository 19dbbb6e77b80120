import { Checkbox, NativeSelect, Textarea, TextInput, VisuallyHidden } from '@mantine/core';
import type { TimeSpan } from '@archwright/protocol';
import { useState } from 'react';
import { NumberBox } from '../look/number-box.js';
import { editorWords as words } from '../words/path-editor.js';
import { changeField, errorOf, type PartEditing } from './editing.js';
import type { Change } from './path-change.js';
import { ownSpan } from './path-change.js';
import type { Choice } from './path-parts.js';

interface Props<Value> {
  of: PartEditing;
  /** Where it stands in the part, such as `checklist.2.text`. */
  field: string;
  label: string;
  hint?: string;
  value: Value;
  put: (value: Value) => Change;
}

export function TextField({ of, field, label, hint, value, put, isLong }: Props<string> & { isLong?: boolean }) {
  const Box = isLong === true ? Textarea : TextInput;
  return (
    <Box
      label={label}
      description={hint}
      value={value}
      error={errorOf(of, field)}
      onChange={(event: { currentTarget: { value: string } }) => {
        changeField(of, field, put(event.currentTarget.value));
      }}
    />
  );
}

/** A number; while what is typed is none, the number from before counts and the field says so. */
export function NumberField({ of, field, label, value, put }: Props<number>) {
  const [isNumber, setIsNumber] = useState(true);
  return (
    <div
      className="path-number"
      onBlur={() => {
        setIsNumber(true);
      }}
    >
      <NumberBox
        label={label}
        value={value}
        error={isNumber ? errorOf(of, field) : words.wanted.number}
        onChange={(typed) => {
          setIsNumber(typed !== null);
          if (typed !== null) changeField(of, field, put(typed));
        }}
      />
    </div>
  );
}

/** What is wrong with several fields together. */
export function FieldError({ of, field }: { of: PartEditing; field: string }) {
  const error = errorOf(of, field);
  return error === undefined ? null : <p className="field-error">{error}</p>;
}

/** One of several; with `none`, an empty choice stands for null. */
export function ChoiceField({
  of,
  field,
  label,
  value,
  put,
  choices,
  hasNone = false,
}: Props<string> & { choices: readonly Choice[]; hasNone?: boolean }) {
  // What is chosen stays to be seen even where it is no choice any more.
  const isKnown = value === '' || choices.some((choice) => choice.value === value);
  const data = [
    ...(hasNone || value === '' ? [{ value: '', label: words.none }] : []),
    ...(isKnown ? [] : [{ value, label: value }]),
    ...choices,
  ];
  return (
    <NativeSelect
      label={label}
      data={data}
      value={value}
      error={errorOf(of, field)}
      onChange={(event) => {
        of.editing.change(put(event.currentTarget.value)(of.editing.path));
      }}
    />
  );
}

export function TickField({ of, label, hint, value, put }: Omit<Props<boolean>, 'field'>) {
  return (
    <Checkbox
      label={label}
      description={hint}
      checked={value}
      onChange={(event) => {
        of.editing.change(put(event.currentTarget.checked)(of.editing.path));
      }}
    />
  );
}

/** Any number of several, kept in the order in which they are offered; what is around them may say their title already. */
export function TicksField({
  of,
  field,
  label,
  value,
  put,
  choices,
  isTitled = false,
}: Props<readonly string[]> & { choices: readonly Choice[]; isTitled?: boolean }) {
  const error = errorOf(of, field);
  const offered = [
    ...choices,
    ...value
      .filter((code) => choices.every((choice) => choice.value !== code))
      .map((code) => ({ value: code, label: code })),
  ];
  return (
    <fieldset className="stack-tight">
      <legend>{isTitled ? <VisuallyHidden>{label}</VisuallyHidden> : label}</legend>
      <FieldError of={of} field={field} />
      {offered.map((choice, index) => (
        <Checkbox
          key={choice.value}
          label={choice.label}
          checked={value.includes(choice.value)}
          error={error !== undefined && index === 0}
          onChange={(event) => {
            const isOn = event.currentTarget.checked;
            const next = offered
              .map((each) => each.value)
              .filter((code) => (code === choice.value ? isOn : value.includes(code)));
            of.editing.change(put(next)(of.editing.path));
          }}
        />
      ))}
    </fieldset>
  );
}

const UNITS = ['minutes', 'calendar-days', 'lab-working-days'] as const satisfies readonly TimeSpan['unit'][];

/** The least or the most of a wait, or no limit. */
export function LimitField({ of, field, label, value, put }: Props<TimeSpan | null>) {
  return (
    <fieldset className="path-limit">
      <legend>{label}</legend>
      <div className="row row-end">
        <NativeSelect
          label={words.fields.unit}
          data={[
            { value: '', label: words.limit.none },
            ...UNITS.map((unit) => ({ value: unit, label: words.limit[unit] })),
          ]}
          value={value?.unit ?? ''}
          onChange={(event) => {
            const unit = UNITS.find((each) => each === event.currentTarget.value);
            of.editing.change(put(unit === undefined ? null : ownSpan(value, { unit }))(of.editing.path));
          }}
        />
        {value === null ? null : (
          <>
            <NumberField
              of={of}
              field={`${field}.amount`}
              label={words.fields.amount}
              value={value.amount}
              put={(amount) => put(ownSpan(value, { amount }))}
            />
            <NativeSelect
              label={words.fields.firmness}
              data={(['typical', 'hard'] as const).map((firmness) => ({
                value: firmness,
                label: words.firmness[firmness],
              }))}
              value={value.firmness}
              onChange={(event) => {
                const firmness = event.currentTarget.value === 'hard' ? 'hard' : 'typical';
                of.editing.change(put(ownSpan(value, { firmness }))(of.editing.path));
              }}
            />
          </>
        )}
      </div>
    </fieldset>
  );
}
