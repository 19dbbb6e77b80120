import { Checkbox } from '@mantine/core';
import { weekdayWords } from '../words/weekdays.js';

interface Props {
  legend: string;
  hint?: string;
  /** As ISO 8601 numbers them: Monday 1. */
  days: readonly number[];
  error?: string | undefined;
  /** Hears them in the order of the week. */
  onChange: (days: number[]) => void;
}

/** Days of the week to tick. */
export function WeekdaysField({ legend, hint, days, error, onChange }: Props) {
  return (
    <fieldset className="stack-tight">
      <legend>{legend}</legend>
      {hint === undefined ? null : <p className="small soft">{hint}</p>}
      <div className="row ticks">
        {weekdayWords.long.map((name, index) => (
          <Checkbox
            key={name}
            label={name}
            checked={days.includes(index + 1)}
            error={error !== undefined && index === 0}
            onChange={(event) => {
              const rest = days.filter((day) => day !== index + 1);
              onChange(event.currentTarget.checked ? [...rest, index + 1].sort((a, b) => a - b) : rest);
            }}
          />
        ))}
      </div>
      {error === undefined ? null : <p className="field-error">{error}</p>}
    </fieldset>
  );
}
