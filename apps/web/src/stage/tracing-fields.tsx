import { Button, Checkbox, NativeSelect, TextInput } from '@mantine/core';
import { stageWords as words } from '../words/chair.js';
import { nextTracing, TRACING_CHOICES, TRACING_NUMBERS, TRACING_TICKS, type TracingDraft } from './tracing-view.js';

const CHOICES = Object.keys(TRACING_CHOICES) as (keyof typeof TRACING_CHOICES)[];
const NUMBERS = Object.keys(TRACING_NUMBERS) as (keyof typeof TRACING_NUMBERS)[];

interface Props {
  tracings: TracingDraft[];
  errors: Record<string, string>;
  onChange: (tracings: TracingDraft[]) => void;
}

/** Several attempts at one tracing, side by side. */
export function TracingFields({ tracings, errors, onChange }: Props) {
  const change = (index: number, part: Partial<TracingDraft>): void => {
    onChange(tracings.map((tracing, at) => (at === index ? { ...tracing, ...part } : tracing)));
  };
  return (
    <section className="stack-tight" aria-labelledby="tracings">
      <h3 id="tracings">{words.tracings}</h3>
      {tracings.map((tracing, index) => (
        // Attempts have no identity but their number.
        <fieldset key={`attempt ${String(index)}`} className="capture-field stack-tight">
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
                  change(index, { [name]: event.currentTarget.value });
                }}
              />
            ))}
            {NUMBERS.map((name) => (
              <TextInput
                key={name}
                label={words.tracing[name]}
                inputMode="decimal"
                value={tracing[name]}
                error={errors[`tracing|${String(index)}|${name}`]}
                onChange={(event) => {
                  change(index, { [name]: event.currentTarget.value });
                }}
              />
            ))}
          </div>
          <div className="row">
            {TRACING_TICKS.map((name) => (
              <Checkbox
                key={name}
                size="md"
                className="check-line"
                label={words.tracing[name]}
                checked={tracing[name]}
                onChange={(event) => {
                  change(index, { [name]: event.currentTarget.checked });
                }}
              />
            ))}
            <Button
              variant="subtle"
              className="push"
              aria-label={words.removeTracing(index + 1)}
              onClick={() => {
                onChange(tracings.filter((_, at) => at !== index));
              }}
            >
              {words.removeTracing(index + 1)}
            </Button>
          </div>
        </fieldset>
      ))}
      {tracings.length < 9 ? (
        <div>
          <Button
            variant="default"
            onClick={() => {
              onChange([...tracings, nextTracing(tracings.at(-1))]);
            }}
          >
            {words.addTracing}
          </Button>
        </div>
      ) : null}
    </section>
  );
}
