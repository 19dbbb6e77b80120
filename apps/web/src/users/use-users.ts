import {
  userList,
  userView,
  type AddUser,
  type ChangeUser,
  type ResetPassword,
  type SetUserActive,
  type UserList,
} from '@archwright/contracts';
import { useMutation, useQuery, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { post, put, read } from '../api/client.js';
import { practiceQuery } from '../api/queries.js';
import { useDecision, type Decided } from '../api/use-decision.js';

const AFFECTED = ['users'];

/** Who may sign in, and everything that a manager does about it. */
export function useUsers() {
  const client = useQueryClient();
  const practice = useSuspenseQuery(practiceQuery).data;
  const users = useQuery({ queryKey: ['users'], queryFn: (): Promise<UserList> => read('/users', userList) });
  const add = useMutation({
    mutationFn: (body: AddUser) => post('/users', userView, body),
    onSettled: () => client.invalidateQueries({ queryKey: AFFECTED }),
  });
  const change = useDecision(
    ({ id, version, body }: Decided<ChangeUser>) => put(`/users/${id}`, userView, body, version),
    AFFECTED,
  );
  const setActive = useDecision(
    ({ id, version, body }: Decided<SetUserActive>) => put(`/users/${id}/activity`, userView, body, version),
    AFFECTED,
  );
  const reset = useDecision(
    ({ id, version, body }: Decided<ResetPassword>) => put(`/users/${id}/password`, userView, body, version),
    AFFECTED,
  );
  return { practice, users, add, change, setActive, reset };
}
