import type { PathProblem } from '@archwright/protocol';
import { messages as english } from './en/path-editor.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, {
  de: () => import('./de/path-editor.js'),
  ar: () => import('./ar/path-editor.js'),
});
const { editor } = said;
type Fault = keyof typeof editor.faults;
const counted = (n: number) => ({ n });
const ofItem = (item: string) => ({ item });

const faults = new Map(
  Object.entries(editor.faults).map(([fault, message]) => [
    fault,
    filled(message, (values: PathProblem['values']) => values),
  ]),
);

/** Words of the parts of a treatment path, and of the screen on which they are changed. */
export const editorWords = {
  ...editor,
  coded: filled(editor.coded, (code: string, title: string) => ({ code, title })),
  between: filled(editor.between, (after: string, before: string) => ({ after, before })),
  chosen: filled(editor.chosen, (kind: string, name: string) => ({ kind, name })),
  hints: { ...editor.hints, trigger: filled(editor.hints.trigger, (code: string) => ({ code })) },
  asked: filled(editor.asked, (kind: string, what: string) => ({ kind, what })),
  titled: filled(editor.titled, (title: string, n: number) => ({ title, n })),
  days: filled(editor.days, (from: number, to: number) => ({ from, to })),
  fieldAt: filled(editor.fieldAt, (part: string, field: string) => ({ part, field })),
  tries: filled(editor.tries, (tries: number, minutes: string) => ({ tries, minutes })),
  equal: filled(editor.equal, (one: string, other: string) => ({ one, other })),
  prescriptionAfter: filled(editor.prescriptionAfter, (visit: string) => ({ visit })),
  limit: { ...editor.limit, of: filled(editor.limit.of, (bound: string, field: string) => ({ bound, field })) },
  list: {
    earlier: filled(editor.list.earlier, ofItem),
    later: filled(editor.list.later, ofItem),
    remove: filled(editor.list.remove, ofItem),
    numbered: filled(editor.list.numbered, (field: string, n: number) => ({ field, n })),
  },
  standsAt: filled(editor.standsAt, (code: string, place: number, visits: number) => ({ code, place, visits })),
  wanted: {
    ...editor.wanted,
    least: filled(editor.wanted.least, counted),
    most: filled(editor.wanted.most, counted),
    shorter: filled(editor.wanted.shorter, counted),
  },
  faultAt: filled(editor.faultAt, (part: string, fault: string) => ({ part, fault })),
  fault: (fault: Fault, values: PathProblem['values']): string => faults.get(fault)?.(values) ?? fault,
  minutesLong: filled(editor.minutesLong, counted),
  span: filled(editor.span, (length: string, firmness: string) => ({ length, firmness })),
};
