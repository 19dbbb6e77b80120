import type { FirstWeeks } from './first-weeks.js';

/** What a person needs to look around in the demonstration practice. */
export interface DemoPractice {
  readonly accounts: readonly { readonly role: string; readonly login: string; readonly password: string }[];
  /** It was loaded just now; false when it was there already. */
  readonly isNew: boolean;
  /** Sentences: what to look at first. */
  readonly firstSteps: readonly string[];
}

/** The demonstration, as the start command is given it. */
export interface Demonstration {
  /** What the demonstration's clock shows as long as nobody moves it. */
  readonly now: () => Date;
  /** Fills an empty database with the practice as of `from`; changes nothing when it is there already. */
  readonly load: (databaseUrl: string, from: Date) => Promise<DemoPractice>;
  /** How long before the present its first cases begin. */
  readonly firstWeeksMs: number;
  /** Opens and treats its first cases through the service at `url`, as far as that was not done before. */
  readonly playFirstWeeks: (url: string, weeks: FirstWeeks) => Promise<void>;
}
