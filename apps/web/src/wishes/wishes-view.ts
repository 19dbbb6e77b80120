import type { Wishes } from '@archwright/contracts';
import { wishWords } from '../words/desk.js';
import { enumerated, listed } from '../words/plural.js';

/** Wishes as typed. */
export interface WishesDraft {
  weekdays: number[];
  from: string;
  to: string;
  unavailableOn: string[];
}

export const emptyWishes: WishesDraft = { weekdays: [], from: '', to: '', unavailableOn: [] };

export const draftOfWishes = (wishes: Wishes): WishesDraft => ({
  weekdays: wishes.weekdays,
  from: wishes.from ?? '',
  to: wishes.to ?? '',
  unavailableOn: wishes.unavailableOn,
});

export const wishesOfDraft = (draft: WishesDraft): Wishes => ({
  weekdays: [...draft.weekdays].sort((a, b) => a - b),
  from: draft.from || null,
  to: draft.to || null,
  unavailableOn: [...draft.unavailableOn].sort(),
});

/** "on Tuesday and Thursday, from 09:00 to 12:30", or "no wishes". */
export function wishSentence(wishes: Wishes): string {
  const days = wishes.weekdays.map((day) => wishWords.weekday[day - 1] ?? '');
  const parts = [
    days.length > 0 ? wishWords.days(listed(days)) : '',
    wishWords.fromTo(wishes.from, wishes.to),
    wishes.unavailableOn.length > 0 ? wishWords.notOn(wishes.unavailableOn.length) : '',
  ].filter((part) => part !== '');
  return parts.length === 0 ? wishWords.none : enumerated(parts);
}
