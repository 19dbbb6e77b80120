import { Button, Checkbox, TextInput } from '@mantine/core';
import type { RecurringDeparture, RecurringHours } from '@archwright/contracts';
import { useState } from 'react';
import { setupWords as words } from '../words/setup.js';
import { weekdayWords } from '../words/weekdays.js';
import {
  endOf,
  minutesBetween,
  nextDates,
  ruleOfWeekly,
  timeInWords,
  weeklyOf,
  type WeeklyChoice,
} from './rule-words.js';

type Time = RecurringDeparture & Partial<Pick<RecurringHours, 'minutes'>>;

const PREVIEWED = 3;

interface Props {
  /** Whose times they are, such as a clinic's. */
  label: string;
  number: number;
  time: Time;
  zone: string;
  today: string;
  error: (field: string) => string | undefined;
  onChange: (time: Time) => void;
  onRemove: () => void;
}

/** One recurring time: weekdays, or a rule written out; what it means stands below while it is typed. */
export function HoursRow({ label, number, time, zone, today, error, onChange, onRemove }: Props) {
  const legend = words.stretchOf(number, label);
  const weekly = weeklyOf(time.rrule);
  const [asRule, setAsRule] = useState(weekly === null);
  const { startsLocal, minutes } = time;
  return (
    <fieldset className="sheet sheet-pad stack-tight">
      <legend className="unseen">{legend}</legend>
      {asRule || weekly === null ? (
        <TextInput
          label={words.rule}
          value={time.rrule}
          error={error('rrule')}
          onChange={(event) => {
            onChange({ ...time, rrule: event.currentTarget.value });
          }}
        />
      ) : (
        <WeekdayTicks
          choice={weekly}
          error={error('rrule')}
          onChange={(choice) => {
            onChange({ ...time, rrule: ruleOfWeekly(choice) });
          }}
        />
      )}
      <div className="row row-end">
        <TextInput
          type="time"
          label={minutes === undefined ? words.leaves : words.from}
          value={startsLocal}
          error={error('startsLocal')}
          onChange={(event) => {
            const from = event.currentTarget.value;
            const length =
              minutes === undefined ? {} : { minutes: minutesBetween(from, endOf(startsLocal, minutes), minutes) };
            onChange({ ...time, startsLocal: from, ...length });
          }}
        />
        {minutes === undefined ? null : (
          <TextInput
            type="time"
            label={words.until}
            value={endOf(startsLocal, minutes)}
            error={error('minutes')}
            onChange={(event) => {
              onChange({ ...time, minutes: minutesBetween(startsLocal, event.currentTarget.value, minutes) });
            }}
          />
        )}
        <TextInput
          type="date"
          label={words.since}
          value={time.startOn}
          error={error('startOn')}
          onChange={(event) => {
            onChange({ ...time, startOn: event.currentTarget.value });
          }}
        />
        {weekly === null ? null : (
          <Button
            variant="subtle"
            aria-label={(asRule ? words.asDaysOf : words.asRuleOf)(legend)}
            onClick={() => {
              setAsRule(!asRule);
            }}
          >
            {asRule ? words.asDays : words.asRule}
          </Button>
        )}
        <Button variant="subtle" aria-label={words.removeStretchOf(number, label)} onClick={onRemove}>
          {words.removeStretch(number)}
        </Button>
      </div>
      <p className="small soft" aria-live="polite">
        {words.next(timeInWords(time), nextDates(time, zone, today, PREVIEWED))}
      </p>
    </fieldset>
  );
}

interface TicksProps {
  choice: WeeklyChoice;
  error: string | undefined;
  onChange: (choice: WeeklyChoice) => void;
}

function WeekdayTicks({ choice: { days, every }, error, onChange }: TicksProps) {
  return (
    <div className="row row-end">
      <div className="row ticks" role="group" aria-label={words.onDays}>
        {weekdayWords.long.map((name, index) => (
          <Checkbox
            key={name}
            label={weekdayWords.short[index]}
            aria-label={name}
            checked={days.includes(index + 1)}
            error={error !== undefined && index === 0}
            onChange={(event) => {
              const rest = days.filter((day) => day !== index + 1);
              const next = event.currentTarget.checked ? [...rest, index + 1] : rest;
              // The last day stays: without any there would be no rule, and removing the time says so better.
              if (next.length > 0) onChange({ days: next, every });
            }}
          />
        ))}
      </div>
      <TextInput
        type="number"
        min={1}
        max={12}
        label={words.every}
        value={every}
        onChange={(event) => {
          onChange({ days, every: Math.max(1, Math.round(Number(event.currentTarget.value))) });
        }}
      />
      {error === undefined ? null : <p className="field-error">{error}</p>}
    </div>
  );
}
