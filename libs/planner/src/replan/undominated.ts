/** Without those that an earlier one equals, or any other beats, in every cost. */
export function undominated<Candidate>(
  candidates: readonly Candidate[],
  costs: (candidate: Candidate) => readonly number[],
): Candidate[] {
  return candidates.filter((candidate, index) => {
    const own = costs(candidate);
    return !candidates.some((other, at) => {
      const others = costs(other);
      if (at === index || others.some((cost, axis) => cost > (own[axis] ?? 0))) return false;
      return at < index || others.some((cost, axis) => cost < (own[axis] ?? 0));
    });
  });
}
