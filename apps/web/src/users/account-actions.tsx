import { Button } from '@mantine/core';
import type { UserView } from '@archwright/contracts';
import { useState, type SyntheticEvent } from 'react';
import { useFirstProblem } from '../look/first-problem.js';
import { Notice, Refusal } from '../look/notice.js';
import { isOutrun, Outrun } from '../look/outrun.js';
import { userWords as words } from '../words/users.js';
import { PasswordField } from './password-field.js';
import { LEAST_PASSWORD } from './user-draft.js';
import type { useUsers } from './use-users.js';

type Props = { user: UserView } & Pick<ReturnType<typeof useUsers>, 'setActive' | 'reset'>;

/** What ends sessions: said before it is done. */
export function AccountActions({ user, setActive, reset }: Props) {
  const [asked, setAsked] = useState<'activity' | 'password' | null>(null);
  const [password, setPassword] = useState('');
  const [attempt, setAttempt] = useState(0);
  const { id, version, isActive } = user;
  const error = setActive.error ?? reset.error;
  const isShort = password.length < LEAST_PASSWORD;
  const isWrong = attempt > 0 && isShort;
  const form = useFirstProblem(attempt, isWrong);

  function confirm(event: SyntheticEvent): void {
    event.preventDefault();
    if (asked === 'activity') {
      setActive.mutate({ id, version, body: { isActive: !isActive } }, { onSuccess: close });
      return;
    }
    setAttempt((before) => before + 1);
    if (!isShort) reset.mutate({ id, version, body: { password } }, { onSuccess: close });
  }
  function close(): void {
    setAsked(null);
    setPassword('');
    setAttempt(0);
  }

  function ask(what: 'activity' | 'password'): void {
    close();
    setAsked(what);
    // What was refused was something else.
    setActive.reset();
    reset.reset();
  }

  return (
    <section className="sheet sheet-pad stack-tight no-print">
      <div className="row">
        <Button
          variant="default"
          aria-pressed={asked === 'password'}
          onClick={() => {
            ask('password');
          }}
        >
          {words.reset}
        </Button>
        <Button
          variant="default"
          aria-pressed={asked === 'activity'}
          onClick={() => {
            ask('activity');
          }}
        >
          {isActive ? words.end : words.letIn}
        </Button>
      </div>
      {reset.isSuccess && asked === null ? (
        <Notice tone="go">{words.given(user.signInName, reset.variables.body.password)}</Notice>
      ) : null}
      <Outrun error={error} />
      <Refusal error={isOutrun(error) ? null : error} />
      {asked === null ? null : (
        <form ref={form} onSubmit={confirm} noValidate className="stack-tight">
          <p className="soft">{thenOf(asked, isActive)}</p>
          {asked === 'password' ? (
            <PasswordField value={password} error={isWrong ? words.need.password : undefined} onChange={setPassword} />
          ) : null}
          <div>
            <Button type="submit" loading={setActive.isPending || reset.isPending}>
              {words.confirm}
            </Button>
          </div>
        </form>
      )}
    </section>
  );
}

function thenOf(asked: 'activity' | 'password', isActive: boolean): string {
  if (asked === 'password') return words.resetThen;
  return isActive ? words.endThen : words.letInThen;
}
