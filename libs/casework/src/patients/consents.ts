import { Consent, uuidv7 } from '@archwright/records';
import { IsNull, type EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';

type Channel = Consent['channel'];

/**
 * What a patient agreed to: the wording at the desk, that reminders may come by this channel; or the one of the system
 * that a file of patients came from, which is not known here.
 */
export type ConsentWording = 'reminders-1' | 'imported';

export async function giveConsents(
  tx: EntityManager,
  actor: Actor,
  given: readonly { readonly patientId: string; readonly channel: Channel }[],
  wordingVersion: ConsentWording,
  now: Date,
): Promise<void> {
  if (given.length === 0) return;
  await tx.insert(
    Consent,
    given.map((each) => ({ ...each, id: uuidv7(), givenAt: now, wordingVersion, recordedBy: actor.userId })),
  );
}

/** A withdrawn consent keeps its row: it shows what was agreed to, and until when. */
export async function reconcileConsents(
  tx: EntityManager,
  actor: Actor,
  patientId: string,
  wanted: readonly Channel[],
  wording: ConsentWording,
  now: Date,
): Promise<void> {
  const live = await tx.findBy(Consent, { patientId, withdrawnAt: IsNull() });
  for (const { id, channel } of live) {
    if (!wanted.includes(channel)) await tx.update(Consent, { id }, { withdrawnAt: now });
  }
  const given = new Set(live.map(({ channel }) => channel));
  const missing = [...new Set(wanted)].filter((channel) => !given.has(channel));
  await giveConsents(
    tx,
    actor,
    missing.map((channel) => ({ patientId, channel })),
    wording,
    now,
  );
}
