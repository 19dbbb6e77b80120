import { Button, NativeSelect, TextInput } from '@mantine/core';
import { useState, type SyntheticEvent } from 'react';
import { useFirstProblem } from '../look/first-problem.js';
import { auditWords as words } from '../words/audit.js';
import { readSearch, type AuditSearch } from './audit-view.js';

interface Props {
  search: AuditSearch;
  people: readonly { id: string; name: string }[];
  onFind: (search: AuditSearch) => void;
}

const TYPED = [
  ['deed', 'text'],
  ['case', 'text'],
  ['from', 'date'],
  ['until', 'date'],
] as const;

/** What to look for; every field may stay empty. */
export function AuditForm({ search, people, onFind }: Props) {
  const [typed, setTyped] = useState({ over: search, draft: search });
  // Another search in the address, as by going back, is shown as what it looks for.
  const draft = typed.over === search ? typed.draft : search;
  const setDraft = (next: AuditSearch): void => {
    setTyped({ over: search, draft: next });
  };
  const [attempt, setAttempt] = useState(0);
  const reading = readSearch(draft);
  const errors = attempt > 0 && 'errors' in reading ? reading.errors : {};
  const form = useFirstProblem(attempt, Object.keys(errors).length > 0);

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if ('query' in reading) onFind(draft);
  }

  return (
    <form ref={form} onSubmit={submit} noValidate className="row row-end no-print">
      <NativeSelect
        label={words.fields.by}
        data={[{ value: '', label: words.anybody }, ...people.map(({ id, name }) => ({ value: id, label: name }))]}
        value={draft.by ?? ''}
        onChange={(event) => {
          setDraft({ ...draft, by: event.currentTarget.value });
        }}
      />
      {TYPED.map(([field, type]) => (
        <TextInput
          key={field}
          type={type}
          label={words.fields[field]}
          value={draft[field] ?? ''}
          error={errors[field]}
          onChange={(event) => {
            setDraft({ ...draft, [field]: event.currentTarget.value });
          }}
        />
      ))}
      <Button type="submit">{words.find}</Button>
    </form>
  );
}
