import type { PracticeRules, PracticeRulesView } from '@archwright/contracts';
import { LANGUAGES, reminderMessage } from '@archwright/notices';
import { requireVersion } from '@archwright/platform';
import { Organisation, recordAudit, type OrganisationSettings } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { VALUES_PER_FALSE_ALARM } from '../screening/false-alarms.js';
import { SOMEBODY, SOME_VISIT, SOME_WAYS } from './invented-visit.js';

export async function viewPracticeRules(tx: EntityManager, actor: Actor): Promise<PracticeRulesView> {
  return viewOf(await tx.findOneByOrFail(Organisation, { id: actor.organisationId }));
}

/**
 * Changes what the practice decided. It holds from the next booking, hold and night on: reminders that are scheduled
 * already keep their time until their visit moves.
 */
export async function changePracticeRules(
  tx: EntityManager,
  actor: Actor,
  { version, rules }: { version: number; rules: PracticeRules },
  now: Date,
): Promise<PracticeRulesView> {
  const id = actor.organisationId;
  const before = await tx.findOneOrFail(Organisation, { where: { id }, lock: { mode: 'pessimistic_write' } });
  requireVersion(version, before.version);
  await tx.update(Organisation, { id }, { settings: settingsOf(before.settings, rules), version: version + 1 });
  const subject = { subjectKind: 'practice-rules', subjectId: id };
  await recordAudit(tx, {
    actorId: actor.userId,
    action: 'practice-rules-changed',
    ...subject,
    details: { rules },
    at: now,
  });
  return viewPracticeRules(tx, actor);
}

function viewOf({ version, settings }: Organisation): PracticeRulesView {
  const rules = rulesOf(settings);
  const samples = LANGUAGES.map((locale) => {
    const { language, subject, text } = reminderMessage({ ...SOMEBODY, locale }, SOME_VISIT, SOME_WAYS, {
      texts: settings.messageTexts,
      line: rules.ownLines[locale],
    });
    return { language, subject, text };
  });
  return { version, rules, samples };
}

function rulesOf(settings: OrganisationSettings): PracticeRules {
  const { reminderLeadMinutes, quietHours, phoneHoldMinutes, provisionalHoldMinutes, ownLines } = settings;
  return {
    mailLeadMinutes: reminderLeadMinutes.mail,
    phoneLeadMinutes: reminderLeadMinutes.phone,
    ...{ quietHours, phoneHoldMinutes, provisionalHoldMinutes },
    recallMonths: settings.recallMonths ?? null,
    valuesPerFalseAlarm: settings.valuesPerFalseAlarm ?? VALUES_PER_FALSE_ALARM,
    ownLines: { en: '', de: '', ar: '', ...ownLines },
  };
}

/** What the rules do not speak of, such as the list of teeth, is kept as it is. */
function settingsOf(
  before: OrganisationSettings,
  { mailLeadMinutes, phoneLeadMinutes, ...rest }: PracticeRules,
): OrganisationSettings {
  const reminderLeadMinutes = { mail: mailLeadMinutes, phone: phoneLeadMinutes };
  return { ...before, ...rest, reminderLeadMinutes };
}
