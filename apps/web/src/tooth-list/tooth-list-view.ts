import { changeToothList, type ChangeToothList, type ToothListView } from '@archwright/contracts';
import { toothListWords as words } from '../words/practice-lists.js';

export const LISTS = ['shades', 'moulds', 'arrangements'] as const satisfies (keyof ChangeToothList)[];
export type ToothListDraft = Readonly<Record<(typeof LISTS)[number], string>>;
export type ToothListErrors = Partial<ToothListDraft>;

const draftOf = (textOf: (list: (typeof LISTS)[number]) => string): ToothListDraft => ({
  shades: textOf('shades'),
  moulds: textOf('moulds'),
  arrangements: textOf('arrangements'),
});

/** One word on each line. */
export const draftOfToothList = (view: ToothListView): ToothListDraft => draftOf((list) => view[list].join('\n'));

/** What would be sent, or which list has lines that are too many or too long. */
export function readToothList(draft: ToothListDraft): { body: ChangeToothList } | { errors: ToothListErrors } {
  const linesOf = (text: string) => text.split('\n').flatMap((line) => (line.trim() === '' ? [] : [line.trim()]));
  const parsed = changeToothList.safeParse(Object.fromEntries(LISTS.map((list) => [list, linesOf(draft[list])])));
  if (parsed.success) return { body: parsed.data };
  const wrong = new Set(parsed.error.issues.map(({ path }) => path[0]));
  return { errors: Object.fromEntries(LISTS.filter((list) => wrong.has(list)).map((list) => [list, words.wrong])) };
}
