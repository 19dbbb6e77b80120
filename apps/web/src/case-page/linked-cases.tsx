import type { CaseView } from '@archwright/contracts';
import { Link } from '@tanstack/react-router';
import { caseWords as words } from '../words/case.js';

/** The ways to the case that this one repairs, and to those that repair this one. */
export function LinkedCases({ view: { parentCase, followingCases } }: { view: CaseView }) {
  const linked = [
    ...(parentCase === null ? [] : [{ ...parentCase, words: words.follows(parentCase.number) }]),
    ...followingCases.map((one) => ({ ...one, words: words.followedBy(one.number) })),
  ];
  return linked.map((one) => (
    <Link key={one.id} to="/desk/cases/$caseId" params={{ caseId: one.id }} title={one.title}>
      {one.words}
    </Link>
  ));
}
