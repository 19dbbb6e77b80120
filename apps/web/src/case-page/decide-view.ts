import type { Arch, CaseView } from '@archwright/contracts';
import { typedCase, type TypedCase } from '../open-case/open-case-view.js';
import { draftOfWishes, type WishesDraft } from '../wishes/wishes-view.js';

/** What is decided after the examination, as it is typed. */
export interface DecisionDraft extends Pick<TypedCase, 'paths' | 'clinicianId'> {
  wishes: WishesDraft;
}

/** As the enquiry has it: nothing of it is decided yet, but it is a start. */
export function decidedSoFar({ arches, clinicianId, wishes }: CaseView): DecisionDraft {
  const pathOf = (arch: Arch): string => arches.find((each) => each.arch === arch)?.pathVersionId ?? '';
  return {
    paths: { upper: pathOf('upper'), lower: pathOf('lower') },
    clinicianId: clinicianId ?? '',
    wishes: draftOfWishes(wishes),
  };
}

const typedDecision = typedCase.pick({ paths: true, clinicianId: true, wishes: true });

/** A draft that the browser kept over a reload; null when it is none. */
export function readTypedDecision(kept: unknown): DecisionDraft | null {
  const { data } = typedDecision.safeParse(kept);
  return data?.wishes ? { ...data, wishes: data.wishes } : null;
}
