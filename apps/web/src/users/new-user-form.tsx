import { Button, TextInput } from '@mantine/core';
import type { AddUser, PracticeView } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { fieldErrors } from '../api/errors.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Notice, Refusal } from '../look/notice.js';
import { userWords as words } from '../words/users.js';
import { PasswordField } from './password-field.js';
import { emptyUser, readNewUser } from './user-draft.js';
import { UserFields } from './user-fields.js';

interface Props {
  practice: PracticeView;
  pending: boolean;
  error: unknown;
  /** The account that was just made, for whoever hands it over. */
  given: Pick<AddUser, 'signInName' | 'password'> | null;
  onGive: (body: AddUser, done: () => void) => void;
}

/** A new account; what was typed stays until the server has it. */
export function NewUserForm({ practice, pending, error, given, onGive }: Props) {
  const [draft, setDraft] = useState(emptyUser);
  const [attempt, setAttempt] = useState(0);
  const reading = readNewUser(draft);
  const errors = { ...fieldErrors(error), ...(attempt > 0 && 'errors' in reading ? reading.errors : {}) };
  const form = useFirstProblem(attempt, Object.keys(errors).length > 0);

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (!('body' in reading)) return;
    onGive(reading.body, () => {
      setDraft(emptyUser);
      setAttempt(0);
    });
  }

  return (
    <form ref={form} onSubmit={submit} noValidate className="sheet sheet-pad stack-tight no-print">
      <h2>{words.add}</h2>
      {given === null ? null : <Notice tone="go">{words.given(given.signInName, given.password)}</Notice>}
      <TextInput
        label={words.fields.signInName}
        autoComplete="off"
        value={draft.signInName}
        error={errors.signInName}
        onChange={(event) => {
          setDraft({ ...draft, signInName: event.currentTarget.value });
        }}
      />
      <UserFields draft={draft} practice={practice} errors={errors} onChange={setDraft} />
      <PasswordField
        value={draft.password}
        error={errors.password}
        onChange={(password) => {
          setDraft({ ...draft, password });
        }}
      />
      <Refusal error={error} />
      <div>
        <Button type="submit" loading={pending}>
          {words.give}
        </Button>
      </div>
    </form>
  );
}
