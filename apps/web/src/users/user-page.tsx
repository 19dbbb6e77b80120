import { Button } from '@mantine/core';
import type { UserView } from '@archwright/contracts';
import { Link, useParams } from '@tanstack/react-router';
import { fieldErrors } from '../api/errors.js';
import { useVersionedForm } from '../drafts/use-versioned-form.js';
import { NotYet } from '../look/not-yet.js';
import { Refusal } from '../look/notice.js';
import { ScreenHead } from '../look/screen.js';
import { VersionClash } from '../look/version-clash.js';
import { NothingHere } from '../frame/not-found.js';
import { userWords as words } from '../words/users.js';
import { AccountActions } from './account-actions.js';
import { draftOfUser, readUser, tellUser } from './user-draft.js';
import { UserFields } from './user-fields.js';
import { useUsers } from './use-users.js';

/** One account: what it may do, its password, its end. */
export function UserPage() {
  const { userId } = useParams({ from: '/inside/practice/users/$userId' });
  const hooks = useUsers();
  const { users } = hooks;
  if (!users.data) {
    return <NotYet asked={users} what={words.loading} />;
  }
  const user = users.data.items.find(({ id }) => id === userId);
  return user === undefined ? <NothingHere /> : <Account user={user} {...hooks} />;
}

function Account({
  user,
  practice,
  users,
  change,
  setActive,
  reset,
}: { user: UserView } & ReturnType<typeof useUsers>) {
  const { form, draft, errors, ...editing } = useVersionedForm({
    version: user.version,
    start: draftOfUser(user),
    read: readUser,
    saving: change,
    save: (body, version, onSuccess) => {
      change.mutate({ id: user.id, version, body }, { onSuccess });
    },
    tell: (typed) => tellUser(typed, practice),
    refetch: async () => (await users.refetch()).data?.items.find(({ id }) => id === user.id)?.version,
  });

  return (
    <>
      <ScreenHead title={user.name} sentence={words.account(user.signInName, words.roles[user.role])}>
        <Link to="/practice/users">{words.back}</Link>
      </ScreenHead>
      <div className="beside">
        <form ref={form} onSubmit={editing.submit} noValidate className="stack column">
          {editing.clash ? <VersionClash {...editing.clash} /> : null}
          <UserFields
            draft={draft}
            practice={practice}
            errors={{ ...fieldErrors(change.error), ...errors }}
            onChange={editing.change}
          />
          <p className="small soft">{words.lessEnds}</p>
          <Refusal error={editing.refusal} />
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
