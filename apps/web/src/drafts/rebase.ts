/** A form that somebody types in: what it was filled with, and what stands in it now. */
export interface Typed<Draft> {
  readonly base: Draft;
  readonly mine: Draft;
}

/** A field in which two people wrote different things. */
export interface Clash<Draft> {
  readonly field: keyof Draft;
  readonly mine: Draft[keyof Draft];
  readonly theirs: Draft[keyof Draft];
}

const isEqual = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);
const fieldsOf = <Draft extends object>(draft: Draft): (keyof Draft)[] => Object.keys(draft) as (keyof Draft)[];

/** What is typed with what others saved meanwhile put in: fields that only one of them touched are that one's. */
export function rebased<Draft extends object>({ base, mine }: Typed<Draft>, theirs: Draft): Draft {
  const merged = { ...mine };
  for (const field of fieldsOf(theirs)) if (isEqual(mine[field], base[field])) merged[field] = theirs[field];
  return merged;
}

/** Fields that others saved meanwhile, differently from what stands in the form. */
export function clashesOf<Draft extends object>({ base, mine }: Typed<Draft>, theirs: Draft): Clash<Draft>[] {
  return fieldsOf(theirs)
    .filter((field) => {
      const isMine = !isEqual(mine[field], base[field]);
      return isMine && !isEqual(theirs[field], base[field]) && !isEqual(mine[field], theirs[field]);
    })
    .map((field) => ({ field, mine: mine[field], theirs: theirs[field] }));
}

/** Fields that others saved meanwhile and that nobody typed in here. */
export function takenOver<Draft extends object>({ base, mine }: Typed<Draft>, theirs: Draft): (keyof Draft)[] {
  return fieldsOf(theirs).filter((field) => isEqual(mine[field], base[field]) && !isEqual(theirs[field], base[field]));
}

/**
 * What a form counts as filled with once somebody types on: everything taken over counts as seen; only fields that clash
 * keep the value from before, so that they go on clashing until somebody chooses.
 */
export function seenBase<Draft extends object>(typed: Typed<Draft>, theirs: Draft): Draft {
  const base = { ...theirs };
  for (const { field } of clashesOf(typed, theirs)) base[field] = typed.base[field];
  return base;
}

/**
 * What stays typed once a form was saved: whatever was typed while the save was on its way, over the record as it is then.
 *
 * @param sent what stood in the form when it was sent, and what had been typed by then
 * @returns null when nothing was typed since
 */
export function typedSince<Draft extends object>(
  { mine }: Typed<Draft>,
  sent: { draft: Draft; mine: Draft },
  saved: Draft,
): Typed<Draft> | null {
  const kept = { ...saved };
  let isKept = false;
  for (const field of fieldsOf(mine)) {
    if (isEqual(mine[field], sent.mine[field]) || isEqual(mine[field], sent.draft[field])) continue;
    kept[field] = mine[field];
    isKept = true;
  }
  return isKept ? { base: saved, mine: kept } : null;
}
