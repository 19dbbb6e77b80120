import { DomainError } from '@archwright/kernel';

/** Reminder settings that cannot be followed. */
export class ReminderSettingError extends DomainError {
  constructor(setting: string, value: string, accepted: string) {
    super('notices.reminder-setting', `${setting} is "${value}". Accepted: ${accepted}.`, { setting, value, accepted });
  }
}

/** A link from a message that opens nothing. The reasons are kept apart so that a page can say what to do next. */
export class LinkError extends DomainError {
  constructor(reason: 'forged' | 'expired' | 'other-purpose' | 'secret', message: string) {
    super(`notices.link-${reason}`, message);
  }
}

/** The mail was not taken now but may be later: try again under the same message id. */
export class TemporaryMailError extends DomainError {
  constructor(stage: string, responseCode: number | null) {
    super(
      'notices.mail-temporary',
      `The mail server did not take the message (${reply(stage, responseCode)}). Try again later.`,
      {
        stage,
        responseCode,
      },
    );
  }
}

/** The mail will never be taken as it is: do not try again, ask a person. */
export class RefusedMailError extends DomainError {
  constructor(stage: string, responseCode: number | null, accepted: string) {
    super(
      'notices.mail-refused',
      `The message was refused for good (${reply(stage, responseCode)}). Accepted: ${accepted}.`,
      {
        stage,
        responseCode,
      },
    );
  }
}

/** Never the server's own words: they often quote the patient's address, and messages are logged. */
function reply(stage: string, responseCode: number | null): string {
  return responseCode === null ? stage : `${stage}, answer ${String(responseCode)}`;
}
