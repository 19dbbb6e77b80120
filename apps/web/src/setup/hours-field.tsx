import { Button } from '@mantine/core';
import type { RecurringDeparture, RecurringHours } from '@archwright/contracts';
import { setupWords as words } from '../words/setup.js';
import { firstHours } from './record-draft.js';
import { HoursRow } from './hours-row.js';

type Time = RecurringDeparture & Partial<Pick<RecurringHours, 'minutes'>>;

interface Props {
  label: string;
  hint?: string;
  times: readonly Time[];
  /** Departures have no length. */
  isDeparture: boolean;
  zone: string;
  today: string;
  errors: Readonly<Record<string, string>>;
  /** Path of the list within the record. */
  path: string;
  onChange: (times: Time[]) => void;
}

/** Recurring times, one row each, in words with the next dates below. */
export function HoursField({ label, hint, times, isDeparture, zone, today, errors, path, onChange }: Props) {
  function add(): void {
    const { minutes, ...start } = firstHours(today);
    onChange([...times, isDeparture ? start : { ...start, minutes }]);
  }
  return (
    <fieldset className="stack-tight">
      <legend>{label}</legend>
      {hint ? <p className="small soft">{hint}</p> : null}
      {times.map((time, index) => (
        <HoursRow
          key={index}
          label={label}
          number={index + 1}
          time={time}
          zone={zone}
          today={today}
          error={(field) => errors[`${path}.${String(index)}.${field}`]}
          onChange={(next) => {
            onChange(times.map((known, at) => (at === index ? next : known)));
          }}
          onRemove={() => {
            onChange(times.filter((_, at) => at !== index));
          }}
        />
      ))}
      {errors[path] ? <p className="field-error">{errors[path]}</p> : null}
      <div>
        <Button variant="default" aria-label={words.addStretchTo(label)} onClick={add}>
          {words.addStretch}
        </Button>
      </div>
    </fieldset>
  );
}
