import { Button, Checkbox, TextInput } from '@mantine/core';
import { useState } from 'react';
import { shortDate } from '../time/wording.js';
import { wishWords } from '../words/desk.js';
import type { WishesDraft } from './wishes-view.js';

interface Props {
  wishes: WishesDraft;
  today: string;
  errors: Record<string, string>;
  onChange: (wishes: WishesDraft) => void;
}

/** Days and times that suit, and days that do not at all. */
export function WishesFields({ wishes, today, errors, onChange }: Props) {
  const [day, setDay] = useState('');
  return (
    <div className="stack">
      <fieldset>
        <legend>{wishWords.weekdays}</legend>
        <p className="small soft">{wishWords.anyDay}</p>
        <div className="row ticks">
          {wishWords.weekday.map((name, index) => (
            <Checkbox
              key={name}
              label={name}
              checked={wishes.weekdays.includes(index + 1)}
              onChange={(event) => {
                const rest = wishes.weekdays.filter((known) => known !== index + 1);
                onChange({ ...wishes, weekdays: event.currentTarget.checked ? [...rest, index + 1] : rest });
              }}
            />
          ))}
        </div>
      </fieldset>
      <div className="row row-end">
        <TextInput
          type="time"
          label={wishWords.from}
          value={wishes.from}
          error={errors['wishes.from']}
          onChange={(event) => {
            onChange({ ...wishes, from: event.currentTarget.value });
          }}
        />
        <TextInput
          type="time"
          label={wishWords.to}
          value={wishes.to}
          error={errors['wishes.to']}
          onChange={(event) => {
            onChange({ ...wishes, to: event.currentTarget.value });
          }}
        />
        <TextInput
          type="date"
          label={wishWords.unavailable}
          value={day}
          onChange={(event) => {
            setDay(event.currentTarget.value);
          }}
        />
        <Button
          variant="default"
          disabled={day === '' || wishes.unavailableOn.includes(day)}
          onClick={() => {
            onChange({ ...wishes, unavailableOn: [...wishes.unavailableOn, day].sort() });
            setDay('');
          }}
        >
          {wishWords.addDay}
        </Button>
      </div>
      {wishes.unavailableOn.length > 0 ? (
        <ul className="row">
          {wishes.unavailableOn.map((date) => (
            <li key={date} className="tag">
              {shortDate(date, today)}
              <button
                type="button"
                className="plain-button"
                aria-label={wishWords.removeDay(shortDate(date, today))}
                onClick={() => {
                  onChange({ ...wishes, unavailableOn: wishes.unavailableOn.filter((known) => known !== date) });
                }}
              >
                ×
              </button>
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}
