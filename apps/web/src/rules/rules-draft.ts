import { practiceRules, type PracticeRules } from '@archwright/contracts';
import type { DraftPart } from '../drafts/differences.js';
import { ruleWords as words } from '../words/rules.js';

/** The rules as they are typed: hours where people think in hours. */
export interface RulesDraft {
  mail: string;
  phone: string;
  quietFrom: string;
  quietTo: string;
  phoneHoldMinutes: string;
  provisionalHoldHours: string;
  recallMonths: string;
  valuesPerFalseAlarm: string;
  en: string;
  de: string;
  ar: string;
}

export type RulesErrors = Partial<Record<keyof RulesDraft, string>>;

const hoursOf = (minutes: number): string => String(minutes / 60);

export const draftOfRules = (rules: PracticeRules): RulesDraft => ({
  mail: rules.mailLeadMinutes.map(hoursOf).join(', '),
  phone: rules.phoneLeadMinutes.map(hoursOf).join(', '),
  quietFrom: rules.quietHours.from,
  quietTo: rules.quietHours.to,
  phoneHoldMinutes: String(rules.phoneHoldMinutes),
  provisionalHoldHours: hoursOf(rules.provisionalHoldMinutes),
  recallMonths: rules.recallMonths === null ? '' : String(rules.recallMonths),
  valuesPerFalseAlarm: String(rules.valuesPerFalseAlarm),
  ...rules.ownLines,
});

/** The rules in words, field by field. */
export const tellRules = ({ en, de, ar, ...rules }: RulesDraft): DraftPart[] => [
  ...Object.entries(rules).map(([key, text]) => ({ key, label: words.fields[key as keyof typeof rules], text })),
  ...Object.entries({ en, de, ar }).map(([key, text]) => ({
    ...{ key, text },
    label: words.languages[key as 'en' | 'de' | 'ar'],
  })),
];

/** Where a field of the contract is typed. */
const FIELD_OF: Readonly<Record<string, keyof RulesDraft>> = {
  mailLeadMinutes: 'mail',
  phoneLeadMinutes: 'phone',
  'quietHours.from': 'quietFrom',
  'quietHours.to': 'quietTo',
  phoneHoldMinutes: 'phoneHoldMinutes',
  provisionalHoldMinutes: 'provisionalHoldHours',
  recallMonths: 'recallMonths',
  valuesPerFalseAlarm: 'valuesPerFalseAlarm',
  'ownLines.en': 'en',
  'ownLines.de': 'de',
  'ownLines.ar': 'ar',
};

/** What would be sent, or what each field accepts. */
export function readRules(draft: RulesDraft): { body: PracticeRules } | { errors: RulesErrors } {
  const { en, de, ar } = draft;
  const parsed = practiceRules.safeParse({
    mailLeadMinutes: minutesList(draft.mail),
    phoneLeadMinutes: minutesList(draft.phone),
    quietHours: { from: draft.quietFrom, to: draft.quietTo },
    phoneHoldMinutes: numberOf(draft.phoneHoldMinutes),
    provisionalHoldMinutes: Math.round(numberOf(draft.provisionalHoldHours) * 60),
    recallMonths: draft.recallMonths.trim() === '' ? null : numberOf(draft.recallMonths),
    valuesPerFalseAlarm: numberOf(draft.valuesPerFalseAlarm),
    ownLines: { en, de, ar },
  });
  if (parsed.success) return { body: parsed.data };
  const errors: RulesErrors = {};
  for (const { path } of parsed.error.issues) {
    const field = FIELD_OF[path.filter((part) => typeof part === 'string').join('.')];
    if (field !== undefined) errors[field] = words.need[field];
  }
  return { errors };
}

/** Empty text is no number, where `Number` says 0. */
const numberOf = (text: string): number => (text.trim() === '' ? NaN : Number(text.replace(',', '.')));

/** Parted by commas, Arabic ones too, or by semicolons where the comma is the decimal sign: "1,5; 24". */
function minutesList(text: string): number[] {
  const parts = text.split(text.includes(';') ? ';' : /[,،]/).map((part) => part.trim());
  return parts.filter((part) => part !== '').map((part) => Math.round(numberOf(part) * 60));
}
