import { Button, Checkbox, NativeSelect, TextInput } from '@mantine/core';
import { latePart } from '../look/late-part.js';
import { Notice } from '../look/notice.js';
import type { Attempts } from '../tracing-pad/attempts-view.js';
import { stageWords as words } from '../words/chair.js';
import { CENTRIC_METHODS, nextCentric, type CentricDraft } from './centric-view.js';
import { CLOSURE_NUMBERS, TRACING_NUMBERS, type NumberName } from './finding-numbers.js';
import { nextDrawing, nextTracing, TRACING_CHOICES, TRACING_TICKS, type TracingDraft } from './tracing-view.js';

// Drawing, reading pictures and evaluating are much script, and most visits draw nothing.
const AttemptsCompared = latePart(words.savedAttempts, async () => {
  const { AttemptsCompared: Part } = await import('../tracing-pad/attempts-compared.js');
  return Part;
});
const DrawnAttempt = latePart(words.drawTracing, async () => {
  const { DrawnAttempt: Part } = await import('../tracing-pad/drawn-attempt.js');
  return Part;
});

/** As many as one save takes. */
const MOST_AT_ONCE = 9;
const CHOICES = Object.keys(TRACING_CHOICES) as (keyof typeof TRACING_CHOICES)[];
/** What is stated of a drawn attempt; its findings are computed. */
const CONDITIONS = ['stylusOn', 'view', 'posture'] as const;
const NUMBERS = Object.keys(TRACING_NUMBERS) as NumberName[];
const NUMBER_LABELS: Readonly<Record<NumberName, string>> = words.tracing;

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

/** Findings as they are typed. */
function TypedFindings<Name extends NumberName>(props: {
  names: readonly Name[];
  at: string;
  value: Readonly<Record<Name, string>>;
  errors: Record<string, string>;
  onChange: (name: Name, typed: string) => void;
}) {
  const { names, at, value, errors, onChange } = props;
  return names.map((name) => (
    <TextInput
      key={name}
      label={NUMBER_LABELS[name]}
      inputMode="decimal"
      value={value[name]}
      error={errors[`${at}|${name}`]}
      onChange={(event) => {
        onChange(name, event.currentTarget.value);
      }}
    />
  ));
}

interface AttemptPart {
  at: string;
  tracing: TracingDraft;
  shared: Shared;
  onChange: (part: Partial<TracingDraft>) => void;
}

function Attempt(props: Omit<AttemptPart, 'at'> & { index: number; onRemove: () => void }) {
  const { index, tracing, shared, onChange, onRemove } = props;
  const at = `tracing|${String(index)}`;
  const choices = tracing.points === null ? CHOICES : CONDITIONS;
  return (
    <fieldset className="capture-field stack-tight">
      <legend>{words.attempt(index + 1)}</legend>
      <div className="capture-boxes">
        {choices.map((name) => (
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
        {tracing.points === null ? (
          <TypedFindings
            names={NUMBERS}
            at={at}
            value={tracing}
            errors={shared.errors}
            onChange={(name, typed) => {
              onChange({ [name]: typed });
            }}
          />
        ) : null}
      </div>
      {tracing.points === null ? null : (
        <DrawnAttempt
          attempt={index + 1}
          points={tracing.points}
          seen={tracing}
          error={shared.errors[`${at}|points`]}
          onChange={(points) => {
            onChange({ points: [...points] });
          }}
        />
      )}
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

function OtherRecord(props: {
  index: number;
  record: CentricDraft;
  shared: Shared;
  onChange: (part: Partial<CentricDraft>) => void;
  onRemove: () => void;
}) {
  const { index, record, shared, onChange, onRemove } = props;
  const at = `centric|${String(index)}`;
  return (
    <fieldset className="capture-field stack-tight">
      <legend>{words.record(index + 1)}</legend>
      <div className="capture-boxes">
        <NativeSelect
          label={words.centricMethod}
          value={record.method}
          data={CENTRIC_METHODS.map((method) => ({ value: method, label: words.centricMethods[method] }))}
          onChange={(event) => {
            onChange({ method: CENTRIC_METHODS.find((one) => one === event.currentTarget.value) ?? record.method });
          }}
        />
        <Dimension at={at} shared={shared} value={record} onChange={onChange} />
        <TypedFindings
          names={CLOSURE_NUMBERS}
          at={at}
          value={record}
          errors={shared.errors}
          onChange={(name, typed) => {
            onChange({ [name]: typed });
          }}
        />
        <Button variant="subtle" onClick={onRemove}>
          {words.removeRecord(index + 1)}
        </Button>
      </div>
    </fieldset>
  );
}

interface Props extends Shared {
  /** Attempts and records that are saved already, in words. */
  saved: string[];
  /** To be put side by side once one of them was drawn. */
  attempts: Attempts;
  tracings: TracingDraft[];
  centric: CentricDraft[];
  /** Whether it is recorded or typed that the injury risk of the set was explained. */
  isRiskExplained: boolean;
  /** Conditions that the next attempt starts from. */
  last: TracingDraft | undefined;
  onTracings: (tracings: TracingDraft[]) => void;
  onCentric: (centric: CentricDraft[]) => void;
}

/** Several attempts at one tracing, and records of the centric relation by other methods, its equals. */
export function TracingFields({
  saved,
  attempts,
  tracings,
  centric,
  isRiskExplained,
  last,
  errors,
  landmarks,
  onTracings,
  onCentric,
}: Props) {
  const shared = { errors, landmarks };
  const isAnyDrawn = attempts.drawn.length > 0 || attempts.saved.some(({ isDrawn }) => isDrawn);
  const made = saved.length + tracings.length + centric.length;
  const change = <T,>(list: T[], at: number, part: Partial<T>): T[] =>
    list.map((one, index) => (index === at ? { ...one, ...part } : one));
  const without = <T,>(list: T[], at: number): T[] => list.filter((_, index) => index !== at);
  // Attempts and records have no identity but their number.
  return (
    <details className="details" open={made > 0 ? true : undefined}>
      <summary>{words.tracings}</summary>
      {isRiskExplained ? null : <Notice tone="caution">{words.explainFirst}</Notice>}
      <div className="stack-tight">
        {saved.length > 0 ? (
          <ol className="saved-attempts" aria-label={words.savedAttempts}>
            {saved.map((line, index) => (
              <li key={`${String(index)} ${line}`}>{line}</li>
            ))}
          </ol>
        ) : null}
        {tracings.map((tracing, index) => (
          <Attempt
            key={`attempt ${String(index)}`}
            index={index}
            tracing={tracing}
            shared={shared}
            onChange={(part) => {
              onTracings(change(tracings, index, part));
            }}
            onRemove={() => {
              onTracings(without(tracings, index));
            }}
          />
        ))}
        {centric.map((record, index) => (
          <OtherRecord
            key={`record ${String(index)}`}
            index={index}
            record={record}
            shared={shared}
            onChange={(part) => {
              onCentric(change(centric, index, part));
            }}
            onRemove={() => {
              onCentric(without(centric, index));
            }}
          />
        ))}
        {isAnyDrawn ? <AttemptsCompared {...attempts} /> : null}
        <div className="row">
          {tracings.length < MOST_AT_ONCE ? (
            <>
              <Button
                variant="default"
                onClick={() => {
                  onTracings([...tracings, nextDrawing(tracings.at(-1) ?? last)]);
                }}
              >
                {words.drawTracing}
              </Button>
              <Button
                variant="default"
                onClick={() => {
                  onTracings([...tracings, nextTracing(tracings.at(-1) ?? last)]);
                }}
              >
                {words.addTracing}
              </Button>
            </>
          ) : null}
          {centric.length < MOST_AT_ONCE ? (
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
