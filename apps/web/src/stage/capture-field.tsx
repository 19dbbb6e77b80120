import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import { memo } from 'react';
import { stageWords as words } from '../words/chair.js';
import type { Entry, FieldEntry } from './capture-boxes.js';

interface Props {
  field: FieldEntry;
  values: Record<string, string>;
  errors: Record<string, string>;
  onChange: (key: string, value: string) => void;
}

function Box({
  field,
  entry,
  value,
  error,
  onChange,
}: {
  field: FieldEntry;
  entry: Entry;
  value: string;
  error: string | undefined;
  onChange: (value: string) => void;
}) {
  const label = entry.label || field.name;
  const aria = entry.label ? `${field.name}, ${entry.label}` : field.name;
  const changed = (event: { currentTarget: { value: string } }): void => {
    onChange(event.currentTarget.value);
  };
  if (field.kind === 'boolean' || field.kind === 'enum') {
    const choices =
      field.kind === 'boolean'
        ? [
            { value: 'true', label: words.yes },
            { value: 'false', label: words.no },
          ]
        : field.choices.map((choice) => ({ value: choice.code, label: choice.label }));
    return (
      <NativeSelect
        label={label}
        aria-label={aria}
        value={value}
        error={error}
        data={[{ value: '', label: words.notAsked }, ...choices]}
        onChange={changed}
      />
    );
  }
  const numeric = field.kind === 'number' ? 'decimal' : field.kind === 'count' ? 'numeric' : 'text';
  return (
    <TextInput
      label={field.unit ? `${label}, ${field.unit}` : label}
      aria-label={field.unit ? `${aria}, ${words.unit(field.unit)}` : aria}
      inputMode={numeric}
      autoComplete="off"
      value={value}
      error={error}
      onChange={changed}
    />
  );
}

/** A sheet has dozens of fields, and a key pressed in one of them changes that one. */
function isSamePicture(before: Props, after: Props): boolean {
  const { field, onChange, values, errors } = after;
  if (before.field !== field || before.onChange !== onChange) return false;
  const keys = [...field.entries.map(({ key }) => key), ...field.method.map(({ stored }) => stored)];
  return keys.every((key) => before.values[key] === values[key] && before.errors[key] === errors[key]);
}

/** One quantity with its unit, usual range, readings and the marks between which it is measured. */
export const CaptureField = memo(function CaptureField({ field, values, errors, onChange }: Props) {
  const several = field.entries.length > 1;
  return (
    <fieldset
      className={field.entries.length > 2 ? 'capture-field capture-wide stack-tight' : 'capture-field stack-tight'}
    >
      {several ? <legend>{field.name}</legend> : null}
      <div className="capture-boxes">
        {field.entries.map((entry) => (
          <Box
            key={entry.key}
            field={field}
            entry={entry}
            value={values[entry.key] ?? ''}
            error={errors[entry.key]}
            onChange={(value) => {
              onChange(entry.key, value);
            }}
          />
        ))}
      </div>
      {field.method.length > 0 ? (
        <div className="capture-boxes">
          {field.method.map((question) => (
            <NativeSelect
              key={question.key}
              label={question.question}
              aria-label={`${field.name}: ${question.question}`}
              value={values[question.stored] ?? ''}
              error={errors[question.stored]}
              data={[{ value: '', label: words.choose }, ...question.options]}
              onChange={(event) => {
                onChange(question.stored, event.currentTarget.value);
              }}
            />
          ))}
        </div>
      ) : null}
      <p className="small soft">
        {[field.required ? words.needed : '', field.hint, field.source].filter(Boolean).join(' · ')}
        {field.caution ? (
          <strong className="capture-caution">
            {' '}
            ▲ <bdi>{field.caution}</bdi>
          </strong>
        ) : null}
      </p>
    </fieldset>
  );
}, isSamePicture);

/** Lines to tick off, some with a count. */
export function CheckLine(props: {
  text: string;
  counted: boolean;
  done: boolean;
  count: string;
  error: string | undefined;
  onTick: (done: boolean) => void;
  onCount: (count: string) => void;
}) {
  if (!props.counted) {
    return (
      <Checkbox
        size="md"
        className="check-line"
        label={props.text}
        checked={props.done}
        onChange={(event) => {
          props.onTick(event.currentTarget.checked);
        }}
      />
    );
  }
  return (
    <div className="row check-line">
      <TextInput
        className="check-count"
        inputMode="numeric"
        aria-label={`${props.text}, ${words.counted}`}
        value={props.count}
        error={props.error}
        onChange={(event) => {
          props.onCount(event.currentTarget.value);
        }}
      />
      <span>{props.text}</span>
    </div>
  );
}
