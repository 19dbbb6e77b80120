import type { Wishes } from '@archwright/contracts';
import { z } from 'zod';
import { wishWords } from '../words/desk.js';
import { enumerated, listed } from '../words/plural.js';
import { weekdayWords } from '../words/weekdays.js';

/** Wishes as typed. */
export interface WishesDraft {
  weekdays: number[];
  from: string;
  to: string;
  unavailableOn: string[];
  /** Days on which somebody can bring the patient; none: nobody has to. */
  escortDays: number[];
  escortFrom: string;
  escortTo: string;
}

export const emptyWishes: WishesDraft = {
  weekdays: [],
  from: '',
  to: '',
  unavailableOn: [],
  escortDays: [],
  escortFrom: '09:00',
  escortTo: '17:00',
};

/** Of what a browser keeps over a reload. */
export const wishesDraft = z.object({
  weekdays: z.array(z.number()),
  from: z.string(),
  to: z.string(),
  unavailableOn: z.array(z.string()),
  escortDays: z.array(z.number()),
  escortFrom: z.string(),
  escortTo: z.string(),
});

export const draftOfWishes = (wishes: Wishes): WishesDraft => ({
  weekdays: wishes.weekdays,
  from: wishes.from ?? '',
  to: wishes.to ?? '',
  unavailableOn: wishes.unavailableOn,
  escortDays: wishes.escort?.weekdays ?? [],
  escortFrom: wishes.escort?.from ?? emptyWishes.escortFrom,
  escortTo: wishes.escort?.to ?? emptyWishes.escortTo,
});

export const wishesOfDraft = (draft: WishesDraft): Wishes => ({
  weekdays: [...draft.weekdays].sort((a, b) => a - b),
  from: draft.from || null,
  to: draft.to || null,
  unavailableOn: [...draft.unavailableOn].sort(),
  escort:
    draft.escortDays.length === 0
      ? null
      : { weekdays: [...draft.escortDays].sort((a, b) => a - b), from: draft.escortFrom, to: draft.escortTo },
});

/** "on Tuesday and Thursday, from 09:00 to 12:30", or "no wishes". */
export function wishSentence(wishes: Wishes): string {
  const daysOf = (weekdays: readonly number[]): string =>
    listed(weekdays.map((day) => weekdayWords.long[day - 1] ?? ''));
  const { weekdays, escort } = wishes;
  const parts = [
    weekdays.length > 0 ? wishWords.days(daysOf(weekdays)) : '',
    wishWords.fromTo(wishes.from, wishes.to),
    wishes.unavailableOn.length > 0 ? wishWords.notOn(wishes.unavailableOn.length) : '',
    escort ? wishWords.brought(daysOf(escort.weekdays), escort.from, escort.to) : '',
  ].filter((part) => part !== '');
  return parts.length === 0 ? wishWords.none : enumerated(parts);
}
