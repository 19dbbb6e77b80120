/** What an organisation decides for itself. */
export interface OrganisationSettings {
  /** How long before a visit reminders go out, per channel, in minutes. */
  readonly reminderLeadMinutes: { readonly mail: number[]; readonly phone: number[] };
  /** No reminder between these local times of the patient; may span midnight. */
  readonly quietHours: { readonly from: string; readonly to: string };
  readonly phoneHoldMinutes: number;
  readonly provisionalHoldMinutes: number;
  /** Months between recalls; null or left out: as the treatment path says. */
  readonly recallMonths?: number | null;
  /** Average run length of screening: of so many ordinary values one is pointed out by chance; left out: 1000. */
  readonly valuesPerFalseAlarm?: number;
  /** A line of its own at the end of each reminder, by language; left out or empty: none. */
  readonly ownLines?: { readonly en: string; readonly de: string; readonly ar: string };
  /** Messages to patients in the practice's own words, by kind and language; left out: as delivered. */
  readonly messageTexts?: Readonly<Record<string, Readonly<Record<string, { subject: string; text: string }>>>>;
  /** The practice's own words for teeth, to choose from; left out: none, whatever is typed. */
  readonly toothList?: ToothList;
}

export interface ToothList {
  readonly shades: string[];
  readonly moulds: string[];
  readonly arrangements: string[];
}
