/** What a person needs to look around in the demonstration practice. */
export interface DemoPractice {
  readonly accounts: readonly { readonly role: string; readonly login: string; readonly password: string }[];
  /** Sentences: what to look at first. */
  readonly firstSteps: readonly string[];
}

/** Fills an empty database with the demonstration practice; changes nothing when it is there already. */
export type LoadDemo = (databaseUrl: string) => Promise<DemoPractice>;
