/** What colleagues are told about a case: to decide, to pause, that it is settled; a laboratory's question and more. */
export type ColleagueTopic = 'decision' | 'pause' | 'settled' | 'question' | 'answer' | 'rejection' | 'lateness';

/** What messages say in one language. Subjects and titles hold a date at most: no name, no treatment, no clinic. */
export interface Words {
  /** For dates and plurals; Latin digits in every language, as on clocks and letters of a practice. */
  readonly intlLocale: string;
  readonly calendarTitle: string;
  readonly subject: {
    readonly reminder: (when: string) => string;
    readonly itinerary: string;
    readonly moved: string;
    readonly cancelled: string;
    readonly colleagues: Readonly<Record<ColleagueTopic, (caseNumber: string) => string>>;
  };
  readonly hello: (givenName: string) => string;
  readonly reminder: string;
  /** "You have 3 appointments", with the number's own form. */
  readonly itinerary: (count: number, form: Intl.LDMLPluralRule) => string;
  readonly moved: string;
  readonly cancelled: string;
  readonly before: (when: string) => string;
  readonly patientTime: (when: string) => string;
  readonly provisional: string;
  readonly confirm: string;
  readonly askToMove: string;
  readonly details: string;
  readonly call: (phone: string) => string;
  readonly colleagues: Readonly<Record<ColleagueTopic, string>>;
  readonly nothingMoved: string;
  readonly open: string;
}
