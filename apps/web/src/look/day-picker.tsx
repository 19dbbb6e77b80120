import { Button } from '@mantine/core';
import { addDays } from '../time/zone.js';
import { frameWords } from '../words/frame.js';
import { DateField } from './date-field.js';

interface Props {
  day: string;
  today: string;
  /** How many days one step goes. */
  step?: number;
  onPick: (day: string) => void;
}

/** Steps to earlier and later days, back to today, or to a day that is typed. */
export function DayPicker({ day, today, step = 1, onPick }: Props) {
  return (
    <div className="row" role="group" aria-label={frameWords.day}>
      <Button
        variant="default"
        onClick={() => {
          onPick(addDays(day, -step));
        }}
      >
        {frameWords.earlier}
      </Button>
      <DateField
        aria-label={frameWords.day}
        value={day}
        onChange={(picked) => {
          if (picked !== '') onPick(picked);
        }}
      />
      <Button
        variant="default"
        onClick={() => {
          onPick(addDays(day, step));
        }}
      >
        {frameWords.later}
      </Button>
      {day === today ? null : (
        <Button
          variant="subtle"
          onClick={() => {
            onPick(today);
          }}
        >
          {frameWords.today}
        </Button>
      )}
    </div>
  );
}
