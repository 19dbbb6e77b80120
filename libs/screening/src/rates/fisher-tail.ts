import { requireWhole } from '../sample/sample.js';

/** How often something happened among so many. */
export interface Count {
  readonly events: number;
  readonly size: number;
}

/**
 * Probability of as many events among the first or more, when the events of both fall on all alike: exact whatever the
 * share is. Each term is the one before times a ratio of whole numbers; the sum of all of them makes them probabilities.
 *
 * @see Fisher (1935), The logic of inductive inference, Journal of the Royal Statistical Society 98:39-82
 */
export function fisherUpperTail(first: Count, second: Count): number {
  for (const { events, size } of [first, second]) {
    requireWhole('Exact test', 'size', size, 1, Number.MAX_SAFE_INTEGER);
    requireWhole('Exact test', 'events', events, 0, size);
  }
  const events = first.events + second.events;
  const fewest = Math.max(0, events - second.size);
  const most = Math.min(events, first.size);
  const ratioTo = (count: number) =>
    ((first.size - count + 1) * (events - count + 1)) / (count * (second.size - events + count));
  // From the likeliest count outwards, so that no term is beyond a number's reach.
  const likeliest = Math.min(
    most,
    Math.max(fewest, Math.floor(((events + 1) * (first.size + 1)) / (first.size + second.size + 2))),
  );
  let [all, tail] = [0, 0];
  const add = (count: number, term: number) => {
    all += term;
    if (count >= first.events) tail += term;
  };
  for (let count = likeliest, term = 1; count <= most; term *= ratioTo(++count)) add(count, term);
  for (let count = likeliest - 1, term = 1 / ratioTo(likeliest); count >= fewest; term /= ratioTo(count--)) {
    add(count, term);
  }
  return Math.min(1, tail / all);
}
