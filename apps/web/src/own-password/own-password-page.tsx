import { Button, PasswordInput } from '@mantine/core';
import { useMutation } from '@tanstack/react-query';
import { useState, type SyntheticEvent } from 'react';
import { z } from 'zod';
import { put } from '../api/client.js';
import { sessionLost } from '../api/session-watch.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Refusal } from '../look/notice.js';
import { ScreenHead } from '../look/screen.js';
import { LEAST_PASSWORD } from '../users/user-draft.js';
import { userWords } from '../words/users.js';

const words = userWords.own;

/** A person's own new password; signing in with it follows at once. */
export function OwnPasswordPage() {
  const [current, setCurrent] = useState('');
  const [next, setNext] = useState('');
  const [attempt, setAttempt] = useState(0);
  const save = useMutation({
    mutationFn: () => put('/sessions/current/password', z.unknown(), { current, next }),
    onSuccess: sessionLost,
  });
  const lacksCurrent = current === '';
  const isShort = next.length < LEAST_PASSWORD;
  const form = useFirstProblem(attempt, lacksCurrent || isShort);

  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (!lacksCurrent && !isShort) save.mutate();
  }

  return (
    <>
      <ScreenHead title={words.title} sentence={words.sentence} />
      <form ref={form} onSubmit={submit} noValidate className="stack column">
        <PasswordInput
          label={words.current}
          autoComplete="current-password"
          value={current}
          error={attempt > 0 && lacksCurrent ? words.currentMissing : undefined}
          onChange={(event) => {
            setCurrent(event.currentTarget.value);
          }}
        />
        <PasswordInput
          label={words.next}
          autoComplete="new-password"
          value={next}
          error={attempt > 0 && isShort ? userWords.need.password : undefined}
          onChange={(event) => {
            setNext(event.currentTarget.value);
          }}
        />
        <Refusal error={save.error} />
        <div>
          <Button type="submit" loading={save.isPending}>
            {words.save}
          </Button>
        </div>
      </form>
    </>
  );
}
