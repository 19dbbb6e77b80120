import { Button, TextInput } from '@mantine/core';
import { useState } from 'react';
import { WeekdaysField } from '../look/weekdays-field.js';
import { shortDate } from '../time/wording.js';
import { wishWords } from '../words/desk.js';
import type { WishesDraft } from './wishes-view.js';

interface Props {
  wishes: WishesDraft;
  today: string;
  errors: Record<string, string>;
  onChange: (wishes: WishesDraft) => void;
}

/** Days and times that suit, days that do not at all, and when somebody can bring the patient. */
export function WishesFields({ wishes, today, errors, onChange }: Props) {
  const [day, setDay] = useState('');
  return (
    <div className="stack">
      <WeekdaysField
        legend={wishWords.weekdays}
        hint={wishWords.anyDay}
        days={wishes.weekdays}
        onChange={(weekdays) => {
          onChange({ ...wishes, weekdays });
        }}
      />
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
      <WeekdaysField
        legend={wishWords.escort}
        hint={wishWords.nobody}
        days={wishes.escortDays}
        onChange={(escortDays) => {
          onChange({ ...wishes, escortDays });
        }}
      />
      {wishes.escortDays.length > 0 ? (
        <div className="row row-end">
          <TextInput
            type="time"
            label={wishWords.escortFrom}
            value={wishes.escortFrom}
            error={errors['wishes.escort.from']}
            onChange={(event) => {
              onChange({ ...wishes, escortFrom: event.currentTarget.value });
            }}
          />
          <TextInput
            type="time"
            label={wishWords.escortTo}
            value={wishes.escortTo}
            error={errors['wishes.escort.to']}
            onChange={(event) => {
              onChange({ ...wishes, escortTo: event.currentTarget.value });
            }}
          />
        </div>
      ) : null}
    </div>
  );
}
