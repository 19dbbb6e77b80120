import { Link } from '@tanstack/react-router';
import { Tag } from '../look/marks.js';
import { NotYet } from '../look/not-yet.js';
import { PlainTable } from '../look/plain-table.js';
import { ScreenHead } from '../look/screen.js';
import { PracticePlaces } from '../practice-page/practice-places.js';
import { userWords as words } from '../words/users.js';
import { NewUserForm } from './new-user-form.js';
import { userRows, usersSentence } from './users-view.js';
import { useUsers } from './use-users.js';

/** Who may sign in, and the way to let somebody in. */
export function UsersPage() {
  const { practice, users, add } = useUsers();
  if (!users.data) {
    return <NotYet asked={users} what={words.loading} />;
  }
  const rows = userRows(users.data.items, practice);
  return (
    <>
      <ScreenHead title={words.title} sentence={usersSentence(rows)} />
      <div className="stack">
        <PracticePlaces />
        <div className="beside">
          <PlainTable
            label={words.title}
            columns={Object.values(words.columns)}
            rows={rows.map(({ id, name, isActive, signInName, role, where, seen }) => ({
              id,
              head: (
                <span className="row">
                  <Link to="/practice/users/$userId" params={{ userId: id }}>
                    {name}
                  </Link>
                  {isActive ? null : <Tag>{words.ended}</Tag>}
                </span>
              ),
              cells: [signInName, role, where, seen],
            }))}
          />
          <NewUserForm
            practice={practice}
            pending={add.isPending}
            error={add.error}
            given={add.isSuccess ? add.variables : null}
            onGive={(body, done) => {
              add.mutate(body, { onSuccess: done });
            }}
          />
        </div>
      </div>
    </>
  );
}
