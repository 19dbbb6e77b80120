import type { UserList, UserView } from '@archwright/contracts';
import { Directory, Session, UserAccount } from '@archwright/records';
import { In, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { looksAfter } from './user-access.js';

/** Everybody whose account the actor looks after, by name. */
export async function listUsers(tx: EntityManager, actor: Actor): Promise<UserList> {
  const accounts = await tx.find(UserAccount, { order: { name: 'ASC', id: 'ASC' } });
  return {
    items: await toViews(
      tx,
      accounts.filter((account) => looksAfter(actor, account)),
    ),
  };
}

export async function viewUser(tx: EntityManager, id: string): Promise<UserView> {
  const [view] = await toViews(tx, [await tx.findOneByOrFail(UserAccount, { id })]);
  if (view === undefined) throw new Error('One account has one view.');
  return view;
}

async function toViews(tx: EntityManager, accounts: readonly UserAccount[]): Promise<UserView[]> {
  const userId = In(accounts.map(({ id }) => id));
  const names = await tx.findBy(Directory, { userId });
  const sessions = await tx.findBy(Session, { userId });
  return accounts.map((account) => {
    const { id, version, name, role, mail, clinicIds, laboratoryIds, practitionerId, disabledAt } = account;
    const seen = sessions.filter((each) => each.userId === id).map(({ lastSeenAt }) => lastSeenAt.toISOString());
    return {
      ...{ id, version, name, role, mail, clinicIds, laboratoryIds, practitionerId },
      signInName: names.find((each) => each.userId === id)?.signInName ?? '',
      isActive: disabledAt === null,
      lastSeenAt: seen.sort().at(-1) ?? null,
    };
  });
}
