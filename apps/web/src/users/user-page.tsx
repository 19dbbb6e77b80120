import { Button } from '@mantine/core';
import type { UserView } from '@archwright/contracts';
import { Link, useParams } from '@tanstack/react-router';
import { useState, type SyntheticEvent } from 'react';
import { fieldErrors, hasStatus } from '../api/errors.js';
import { useVersionedDraft } from '../drafts/use-versioned-draft.js';
import { useFirstProblem } from '../look/first-problem.js';
import { Conflict, Refusal } from '../look/notice.js';
import { FirstWait, ScreenHead } from '../look/screen.js';
import { NotFound } from '../frame/not-found.js';
import { userWords as words } from '../words/users.js';
import { AccountActions } from './account-actions.js';
import { draftOfUser, readUser, type UserDraft } from './user-draft.js';
import { UserFields } from './user-fields.js';
import { useUsers } from './use-users.js';

/** One account: what it may do, its password, its end. */
export function UserPage() {
  const { userId } = useParams({ from: '/inside/practice/users/$userId' });
  const hooks = useUsers();
  const { users } = hooks;
  if (!users.data) {
    return users.error ? (
      <Refusal error={users.error} onRetry={() => void users.refetch()} />
    ) : (
      <FirstWait what={words.loading} />
    );
  }
  const user = users.data.items.find(({ id }) => id === userId);
  return user === undefined ? <NotFound /> : <Account user={user} {...hooks} />;
}

function Account({
  user,
  practice,
  users,
  change,
  setActive,
  reset,
}: { user: UserView } & ReturnType<typeof useUsers>) {
  const kept = useVersionedDraft<UserDraft>(user.version);
  const [attempt, setAttempt] = useState(0);
  const draft = kept.typed ?? draftOfUser(user);
  const reading = readUser(draft);
  const errors = { ...fieldErrors(change.error), ...(attempt > 0 && 'errors' in reading ? reading.errors : {}) };
  const form = useFirstProblem(attempt, Object.keys(errors).length > 0);
  const isStale = hasStatus(change.error, 412);

  async function reload(keep: boolean): Promise<void> {
    const { data } = await users.refetch();
    if (keep) kept.keepOver(data?.items.find(({ id }) => id === user.id)?.version ?? user.version);
    else kept.forget();
    change.reset();
  }
  function submit(event: SyntheticEvent): void {
    event.preventDefault();
    setAttempt((before) => before + 1);
    if (!('body' in reading)) return;
    const done = () => {
      kept.forget();
      setAttempt(0);
    };
    change.mutate({ id: user.id, version: kept.version, body: reading.body }, { onSuccess: done });
  }

  return (
    <>
      <ScreenHead title={user.name} sentence={`${user.signInName}, ${words.roles[user.role]}`}>
        <Link to="/practice/users">{words.back}</Link>
      </ScreenHead>
      <div className="beside">
        <form ref={form} onSubmit={submit} noValidate className="stack column">
          {isStale ? <Conflict onKeepMine={() => void reload(true)} onTakeTheirs={() => void reload(false)} /> : null}
          <UserFields draft={draft} practice={practice} errors={errors} onChange={kept.type} />
          <p className="small soft">{words.lessEnds}</p>
          <Refusal error={isStale ? null : change.error} />
          <div>
            <Button type="submit" loading={change.isPending}>
              {words.save}
            </Button>
          </div>
        </form>
        <AccountActions user={user} setActive={setActive} reset={reset} />
      </div>
    </>
  );
}
