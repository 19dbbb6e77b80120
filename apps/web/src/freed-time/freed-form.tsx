import { Button, NativeSelect, TextInput } from '@mantine/core';
import type { PracticeView } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { DateField } from '../look/date-field.js';
import { useFirstProblem } from '../look/first-problem.js';
import { cliniciansOf } from '../open-case/open-case-view.js';
import { freedWords as words } from '../words/freed-time.js';
import { askedTime, askFor, chooseClinic, type FreedSearch } from './freed-time-view.js';

interface Props {
  practice: PracticeView;
  search: FreedSearch;
  onAsk: (search: FreedSearch) => void;
}

/** Whose time it is, and when. */
export function FreedForm({ practice, search, onAsk }: Props) {
  const [only] = practice.clinics;
  const [typed, setTyped] = useState<FreedSearch>({ clinic: only?.id ?? '', on: practice.today, ...search });
  const [attempt, setAttempt] = useState(0);
  const { query, wrong } = askedTime(practice, typed);
  const form = useFirstProblem(attempt, query === null);
  const field = (key: keyof typeof wrong) => ({
    value: typed[key] ?? '',
    error: attempt > 0 ? wrong[key] : undefined,
    onChange: (event: { currentTarget: { value: string } }) => {
      setTyped({ ...typed, [key]: event.currentTarget.value });
    },
  });

  function ask(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (query !== null) onAsk(askFor(typed, search));
  }

  return (
    <form ref={form} className="sheet sheet-pad stack-tight" onSubmit={ask} noValidate>
      <div className="row row-end">
        <NativeSelect
          label={words.clinic}
          data={practice.clinics.map(({ id, name }) => ({ value: id, label: name }))}
          {...field('clinic')}
          onChange={(event) => {
            setTyped(chooseClinic(practice, typed, event.currentTarget.value));
          }}
        />
        <NativeSelect
          label={words.clinician}
          data={[{ value: '', label: words.choose }, ...cliniciansOf(practice, [typed.clinic ?? ''])]}
          {...field('clinician')}
        />
        <DateField
          label={words.day}
          min={practice.today}
          {...field('on')}
          onChange={(on) => {
            setTyped({ ...typed, on });
          }}
        />
        <TextInput type="time" label={words.from} step={300} {...field('starts')} />
        <TextInput type="time" label={words.to} step={300} {...field('ends')} />
        <Button type="submit">{words.ask}</Button>
      </div>
    </form>
  );
}
