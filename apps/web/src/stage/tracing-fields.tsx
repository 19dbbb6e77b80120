import { Button, Checkbox, NativeSelect, TextInput } from '@mantine/core';
import { stageWords as words } from '../words/chair.js';
import { CENTRIC_METHODS, nextCentric, type CentricDraft } from './centric-view.js';
import { nextTracing, TRACING_CHOICES, TRACING_NUMBERS, TRACING_TICKS, type TracingDraft } from './tracing-view.js';

const CHOICES = Object.keys(TRACING_CHOICES) as (keyof typeof TRACING_CHOICES)[];
const NUMBERS = Object.keys(TRACING_NUMBERS) as (keyof typeof TRACING_NUMBERS)[];

interface Shared {
  errors: Record<string, string>;
  landmarks: { value: string; label: string }[];
}

/** The vertical dimension at which a record was made, with the marks it was measured between. */
function Dimension(props: {
  at: string;
  shared: Shared;
  value: { dimensionMm: string; landmarks: string };
  onChange: (part: { dimensionMm: string } | { landmarks: string }) => void;
}) {
  const { at, shared, value, onChange } = props;
  if (shared.landmarks.length === 0) return null;
  return (
    <>
      <TextInput
        label={words.tracing.dimensionMm}
        inputMode="decimal"
        value={value.dimensionMm}
        error={shared.errors[`${at}|dimensionMm`]}
        onChange={(event) => {
          onChange({ dimensionMm: event.currentTarget.value });
        }}
      />
      <NativeSelect
        label={words.tracing.landmarks}
        value={value.landmarks}
        error={shared.errors[`${at}|landmarks`]}
        data={[{ value: '', label: words.choose }, ...shared.landmarks]}
        onChange={(event) => {
          onChange({ landmarks: event.currentTarget.value });
        }}
      />
    </>
  );
}

function Attempt(props: {
  index: number;
  tracing: TracingDraft;
  shared: Shared;
  onChange: (part: Partial<TracingDraft>) => void;
  onRemove: () => void;
}) {
  const { index, tracing, shared, onChange, onRemove } = props;
  const at = `tracing|${String(index)}`;
  return (
    <fieldset className="capture-field stack-tight">
      <legend>{words.attempt(index + 1)}</legend>
      <div className="capture-boxes">
        {CHOICES.map((name) => (
          <NativeSelect
            key={name}
            label={words.tracing[name]}
            value={tracing[name]}
            data={TRACING_CHOICES[name].map((choice) => ({
              value: choice,
              label: words.tracingChoices[choice] ?? choice,
            }))}
            onChange={(event) => {
              onChange({ [name]: event.currentTarget.value });
            }}
          />
        ))}
        <Dimension at={at} shared={shared} value={tracing} onChange={onChange} />
        {NUMBERS.map((name) => (
          <TextInput
            key={name}
            label={words.tracing[name]}
            inputMode="decimal"
            value={tracing[name]}
            error={shared.errors[`${at}|${name}`]}
            onChange={(event) => {
              onChange({ [name]: event.currentTarget.value });
            }}
          />
        ))}
      </div>
      <div className="row ticks">
        {TRACING_TICKS.map((name) => (
          <Checkbox
            key={name}
            size="md"
            className="check-line"
            label={words.tracing[name]}
            checked={tracing[name]}
            onChange={(event) => {
              onChange({ [name]: event.currentTarget.checked });
            }}
          />
        ))}
        <Button variant="subtle" className="push" onClick={onRemove}>
          {words.removeTracing(index + 1)}
        </Button>
      </div>
    </fieldset>
  );
}

interface Props extends Shared {
  tracings: TracingDraft[];
  centric: CentricDraft[];
  onTracings: (tracings: TracingDraft[]) => void;
  onCentric: (centric: CentricDraft[]) => void;
}

/** Several attempts at one tracing, and records of the centric relation by other methods, its equals. */
export function TracingFields({ tracings, centric, errors, landmarks, onTracings, onCentric }: Props) {
  const shared = { errors, landmarks };
  // Attempts and records have no identity but their number.
  return (
    <details className="details" open={tracings.length + centric.length > 0 ? true : undefined}>
      <summary>{words.tracings}</summary>
      <div className="stack-tight">
        {tracings.map((tracing, index) => (
          <Attempt
            key={`attempt ${String(index)}`}
            index={index}
            tracing={tracing}
            shared={shared}
            onChange={(part) => {
              onTracings(tracings.map((one, at) => (at === index ? { ...one, ...part } : one)));
            }}
            onRemove={() => {
              onTracings(tracings.filter((_, at) => at !== index));
            }}
          />
        ))}
        {centric.map((record, index) => (
          <fieldset key={`record ${String(index)}`} className="capture-field stack-tight">
            <legend>{words.record(index + 1)}</legend>
            <div className="capture-boxes">
              <NativeSelect
                label={words.centricMethod}
                value={record.method}
                data={CENTRIC_METHODS.map((method) => ({ value: method, label: words.centricMethods[method] }))}
                onChange={(event) => {
                  const method = CENTRIC_METHODS.find((one) => one === event.currentTarget.value) ?? record.method;
                  onCentric(centric.map((one, at) => (at === index ? { ...one, method } : one)));
                }}
              />
              <Dimension
                at={`centric|${String(index)}`}
                shared={shared}
                value={record}
                onChange={(part) => {
                  onCentric(centric.map((one, at) => (at === index ? { ...one, ...part } : one)));
                }}
              />
              <Button
                variant="subtle"
                onClick={() => {
                  onCentric(centric.filter((_, at) => at !== index));
                }}
              >
                {words.removeRecord(index + 1)}
              </Button>
            </div>
          </fieldset>
        ))}
        <div className="row">
          {tracings.length < 9 ? (
            <Button
              variant="default"
              onClick={() => {
                onTracings([...tracings, nextTracing(tracings.at(-1))]);
              }}
            >
              {words.addTracing}
            </Button>
          ) : null}
          {centric.length < 9 ? (
            <Button
              variant="default"
              onClick={() => {
                onCentric([...centric, nextCentric()]);
              }}
            >
              {words.addRecord}
            </Button>
          ) : null}
        </div>
      </div>
    </details>
  );
}
