export {
  DEFAULT_LEAD_TIMES,
  DEFAULT_QUIET_HOURS,
  dueReminders,
  type DueReminder,
  type QuietHours,
  type ReminderRequest,
} from './due-reminders.js';
export { LinkError, RefusedMailError, ReminderSettingError, TemporaryMailError } from './errors.js';
export { createMailer, type Mail, type Mailer } from './mailer.js';
export { messageIdOf } from './message-id.js';
export {
  LANGUAGES,
  calendarTitleIn,
  cancelledMessage,
  colleagueMessage,
  deliveredIn,
  itineraryMessage,
  languageOf,
  movedMessage,
  reminderMessage,
  type Addressee,
  type Language,
  type Message,
  type OwnTexts,
  type OwnWords,
  type ReplyWays,
  type VisitFacts,
} from './messages/compose.js';
export { PATIENT_MESSAGES, type MessageText, type PatientMessage } from './messages/texts.js';
export type { ColleagueTopic } from './messages/words.js';
export { signLink, verifyLink, type LinkPurpose, type LinkSubject } from './signed-link.js';
