import type { ChangeMessageTexts, MessageTextsView, MessageWords } from '@archwright/contracts';
import {
  LANGUAGES,
  PATIENT_MESSAGES,
  cancelledMessage,
  deliveredIn,
  itineraryMessage,
  movedMessage,
  reminderMessage,
  type Language,
  type Message,
  type OwnTexts,
  type PatientMessage,
} from '@archwright/notices';
import { requireVersion } from '@archwright/platform';
import { Organisation, recordAudit } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { EARLIER_START, SOMEBODY, SOME_VISIT, SOME_WAYS } from './invented-visit.js';

/** The texts of messages to patients: as delivered, the practice's own, and how each reads when it is sent. */
export async function viewMessageTexts(tx: EntityManager, { organisationId }: Actor): Promise<MessageTextsView> {
  const { version, settings } = await tx.findOneByOrFail(Organisation, { id: organisationId });
  const own: OwnTexts = settings.messageTexts ?? {};
  const texts = PATIENT_MESSAGES.flatMap((message) =>
    LANGUAGES.map((language) => ({
      message,
      language,
      own: own[message]?.[language] ?? null,
      delivered: deliveredIn(language, message),
      sample: sampleOf(message, language, own),
    })),
  );
  return { version, texts };
}

/** Keeps the practice's own texts as a whole; a message that waits already is sent in the words in force when it leaves. */
export async function changeMessageTexts(
  tx: EntityManager,
  actor: Actor,
  { version, texts }: ChangeMessageTexts & { version: number },
  now: Date,
): Promise<MessageTextsView> {
  const id = actor.organisationId;
  const before = await tx.findOneOrFail(Organisation, { where: { id }, lock: { mode: 'pessimistic_write' } });
  requireVersion(version, before.version);
  const messageTexts: Partial<Record<PatientMessage, Partial<Record<Language, MessageWords>>>> = {};
  for (const { message, language, subject, text } of texts)
    messageTexts[message] = { ...messageTexts[message], [language]: { subject, text } };
  await tx.update(Organisation, { id }, { settings: { ...before.settings, messageTexts }, version: version + 1 });
  await recordAudit(tx, {
    actorId: actor.userId,
    action: 'message-texts-changed',
    subjectKind: 'message-texts',
    subjectId: id,
    details: { texts },
    at: now,
  });
  return viewMessageTexts(tx, actor);
}

function sampleOf(kind: PatientMessage, locale: Language, texts: OwnTexts): MessageWords {
  const { subject, text } = composed(kind, { ...SOMEBODY, locale }, texts);
  return { subject, text: text.trim() };
}

function composed(kind: PatientMessage, to: typeof SOMEBODY & { locale: Language }, texts: OwnTexts): Message {
  switch (kind) {
    case 'reminder':
      return reminderMessage(to, SOME_VISIT, SOME_WAYS, { texts });
    case 'itinerary':
      return itineraryMessage(to, [SOME_VISIT], SOME_WAYS, texts);
    case 'moved':
      return movedMessage(to, SOME_VISIT, EARLIER_START, SOME_WAYS, texts);
    case 'cancelled':
      return cancelledMessage(to, SOME_VISIT, SOME_WAYS.phone, texts);
  }
}
