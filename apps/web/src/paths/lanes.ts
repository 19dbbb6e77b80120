/** Something drawn between two places of a line, which takes room from `least` to `most`. */
export interface Span {
  readonly code: string;
  readonly from: number;
  readonly to: number;
  readonly least: number;
  readonly most: number;
}

/** Puts spans into as few lanes as they need, so that none lies on another; short ones come nearest to the line. */
export function fittedLanes(spans: readonly Span[]): { spans: (Span & { lane: number })[]; lanes: number } {
  const lanes: Span[][] = [];
  const byLength = [...spans].sort((one, other) => one.most - one.least - (other.most - other.least));
  const fitted = byLength.map((span) => {
    const free = lanes.findIndex((lane) => lane.every(({ least, most }) => most < span.least || span.most < least));
    const lane = free < 0 ? lanes.length : free;
    lanes[lane] = [...(lanes[lane] ?? []), span];
    return { ...span, lane };
  });
  return { spans: fitted, lanes: lanes.length };
}
