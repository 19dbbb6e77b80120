import { Button, NativeSelect, TextInput } from '@mantine/core';
import type { PracticeView } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { Notice } from '../look/notice.js';
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
  const [tried, setTried] = useState(false);
  const isComplete = askedTime(practice, typed) !== null;
  const field = (key: keyof FreedSearch) => ({
    value: typed[key] ?? '',
    onChange: (event: { currentTarget: { value: string } }) => {
      setTyped({ ...typed, [key]: event.currentTarget.value });
    },
  });

  function ask(event: SyntheticEvent): void {
    event.preventDefault();
    setTried(true);
    if (isComplete) onAsk(askFor(typed, search));
  }

  return (
    <form className="sheet sheet-pad stack-tight" onSubmit={ask} noValidate>
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
        <TextInput type="date" label={words.day} min={practice.today} {...field('on')} />
        <TextInput type="time" label={words.from} step={300} {...field('starts')} />
        <TextInput type="time" label={words.to} step={300} {...field('ends')} />
        <Button type="submit">{words.ask}</Button>
      </div>
      {tried && !isComplete ? <Notice tone="stop">{words.incomplete}</Notice> : null}
    </form>
  );
}
