import type { ChooseTeeth, ToothChoiceView } from '@archwright/contracts';
import { z } from 'zod';
import type { Clash } from '../drafts/rebase.js';
import type { ClashRow } from '../look/clash-sheet.js';
import { typedNumber } from '../stage/typed-number.js';
import { teethWords as words } from '../words/teeth.js';

type Measured = ChooseTeeth['measured'][number];

/** A choice of teeth while it is typed; widths are texts, so that a half-typed number is never lost. */
export interface TeethDraft extends Omit<ChooseTeeth, 'decidedBy' | 'measured'> {
  decidedBy: string;
  measured: (Pick<Measured, 'target' | 'object'> & { text: string })[];
}

export const draftOf = ({ wish, arrangement, shade, mould, decidedBy, measured }: ToothChoiceView): TeethDraft => ({
  wish,
  arrangement,
  shade,
  mould,
  decidedBy: decidedBy ?? '',
  measured: measured.map(({ target, object, valueMm }) => ({ target, object, text: String(valueMm) })),
});

/** Widths that are numbers by now. */
export const measuredOf = ({ measured }: TeethDraft): Measured[] =>
  measured.flatMap(({ target, object, text }) => {
    const valueMm = typedNumber(text);
    return valueMm === null ? [] : [{ target, object, valueMm }];
  });

/** What would be sent; null while a width is no number. */
export function readTeeth(draft: TeethDraft): { body: ChooseTeeth | null; errors: Record<string, string> } {
  const errors = Object.fromEntries(
    draft.measured.flatMap(({ text }, index) =>
      typedNumber(text) === null ? [[`measured.${String(index)}.valueMm`, words.notANumber]] : [],
    ),
  );
  if (Object.keys(errors).length > 0) return { body: null, errors };
  const decidedBy = draft.decidedBy === '' ? null : (draft.decidedBy as NonNullable<ChooseTeeth['decidedBy']>);
  const { wish, arrangement, shade, mould } = draft;
  const said = { wish: wish.trim(), arrangement: arrangement.trim(), shade: shade.trim(), mould: mould.trim() };
  return { body: { ...said, decidedBy, measured: measuredOf(draft) }, errors };
}

const keptTeeth = z.object({
  wish: z.string(),
  arrangement: z.string(),
  shade: z.string(),
  mould: z.string(),
  decidedBy: z.string(),
  measured: z.array(
    z.object({
      target: z.enum(Object.keys(words.targets) as Measured['target'][]),
      object: z.enum(Object.keys(words.objects) as Measured['object'][]),
      text: z.string(),
    }),
  ),
});

/** A choice that the browser kept over a reload; null when it is none. */
export const readTeethDraft = (kept: unknown): TeethDraft | null => keptTeeth.safeParse(kept).data ?? null;

function inWords(value: TeethDraft[keyof TeethDraft]): string {
  if (typeof value === 'string') return words.deciders.find((decider) => decider.value === value)?.label ?? value;
  return value
    .map(({ target, object, text }) => words.measuredName(words.targets[target], words.objects[object], text))
    .join('; ');
}

/** What two people chose at once, in words. */
export const teethClashes = (clashes: readonly Clash<TeethDraft>[]): ClashRow[] =>
  clashes.map(({ field, mine, theirs }) => ({
    key: field,
    label: words[field],
    mine: inWords(mine),
    theirs: inWords(theirs),
  }));
