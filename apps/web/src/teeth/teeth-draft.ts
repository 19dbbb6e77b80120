import type { ChooseTeeth, ToothChoiceView } from '@archwright/contracts';
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
