import type { StagePart } from './case-chain.js';
import { ArchesNotCombinableError } from './errors.js';
import type { Arch, TreatmentPath } from './path-schema.js';

/** Visits of one or both arches that become one stage. */
export interface VisitGroup {
  readonly code: string;
  readonly parts: readonly StagePart[];
}

interface Strand {
  readonly path: TreatmentPath;
  readonly arches: readonly Arch[];
  /** Visits of the path that one of its arches does not have: rounds of healing. */
  readonly without: ReadonlyMap<Arch, ReadonlySet<string>>;
}

/** A group that waits for its place: indices of the groups that come before it. */
interface Waiting {
  readonly parts: StagePart[];
  readonly before: Set<Waiting>;
}

/**
 * Puts the visits of one or two paths into one order: shared stages are one, each path keeps its own order, and a path that must
 * be finished before a stage of the other (a reline before the jaw relation record) is.
 *
 * @throws {ArchesNotCombinableError} when shared stages come in different orders or a path does not allow the arch
 */
export function mergeVisits(strands: readonly Strand[]): VisitGroup[] {
  for (const { path, arches } of strands) {
    const refused = arches.find((arch) => !path.arches.includes(arch));
    if (refused === undefined) continue;
    throw new ArchesNotCombinableError(
      `Path "${path.code}" is not made for the ${refused} arch. It allows: ${path.arches.join(', ')}.`,
      { path: path.code, arch: refused },
    );
  }
  const shared = sharedNames(strands);
  const byName = new Map<string, Waiting>();
  const lines = strands.map((strand) => lineUp(strand, shared, byName));
  strands.forEach((strand, index) => {
    holdOpposing(strand.path, lines[index] ?? [], lines.filter((_, other) => other !== index).flat());
  });
  const groups = inOrder([...new Set(lines.flat())], strands);
  return groups.map((group) => ({ code: codeOf(group, groups), parts: group.parts }));
}

/** Names at which both paths have a visit. Reviews are shared only where the dentures are placed together. */
function sharedNames(strands: readonly Strand[]): Set<string> {
  const [first, second] = strands.map(({ path }) => path);
  if (first === undefined || second === undefined) return new Set();
  const names = (path: TreatmentPath) => new Map(path.visits.map((visit) => [visit.joins, visit]));
  const theirs = names(second);
  const delivery = (path: TreatmentPath) => path.visits.find((visit) => visit.isDelivery)?.joins ?? null;
  const placedTogether = delivery(first) !== null && delivery(first) === delivery(second);
  return new Set(
    [...names(first)].flatMap(([name, visit]) =>
      name !== null && theirs.has(name) && (placedTogether || !visit.isReview) ? [name] : [],
    ),
  );
}

function lineUp(
  { path, arches, without }: Strand,
  shared: ReadonlySet<string>,
  byName: Map<string, Waiting>,
): Waiting[] {
  const line = path.visits.map((visit): Waiting => {
    const parts = arches
      .filter((arch) => without.get(arch)?.has(visit.code) !== true)
      .map((arch): StagePart => ({ arch, path: path.code, visit }));
    const met = visit.joins === null || !shared.has(visit.joins) ? undefined : byName.get(visit.joins);
    if (met !== undefined) {
      met.parts.push(...parts);
      return met;
    }
    const group: Waiting = { parts, before: new Set() };
    if (visit.joins !== null && shared.has(visit.joins)) byName.set(visit.joins, group);
    return group;
  });
  line.forEach((group, index) => {
    const previous = line[index - 1];
    if (previous !== undefined) group.before.add(previous);
  });
  return line;
}

/** Adds what a path asks of the opposing arch's stages, by their shared names. */
function holdOpposing({ opposing }: TreatmentPath, own: readonly Waiting[], others: readonly Waiting[]): void {
  const named = (name: string | null) =>
    others.find((group) => name !== null && group.parts.some((part) => part.visit.joins === name));
  const start = named(opposing.startsAfter);
  const end = named(opposing.finishedBefore);
  const first = own[0];
  if (start !== undefined && first !== undefined && start !== first) first.before.add(start);
  const delivery = own.findIndex((group) => group.parts.some((part) => part.visit.isDelivery));
  const firstCheck = own.findIndex((group) => group.parts.some((part) => part.visit.joins === 'first-check'));
  const last = own[Math.max(delivery, firstCheck)];
  if (end !== undefined && last !== undefined) end.before.add(last);
}

function inOrder(groups: readonly Waiting[], strands: readonly Strand[]): Waiting[] {
  const placed = new Set<Waiting>();
  const rank = (group: Waiting): number => {
    const part = group.parts[0];
    const isLate = part?.visit.isReview === true && !(part.visit.chained && part.visit.joins === 'first-check') ? 4 : 0;
    const strand = strands.findIndex(
      ({ path, arches }) => part !== undefined && path.code === part.path && arches.includes(part.arch),
    );
    const hurries = strands[strand]?.path.opposing.finishedBefore != null;
    return isLate + (hurries ? 0 : 2) + (strand === 1 ? 1 : 0);
  };
  while (placed.size < groups.length) {
    const ready = groups.filter(
      (group) => !placed.has(group) && [...group.before].every((before) => placed.has(before)),
    );
    const next = ready.reduce<Waiting | null>(
      (best, group) => (best === null || rank(group) < rank(best) ? group : best),
      null,
    );
    if (next === null) {
      const paths = strands.map(({ path }) => path.code);
      throw new ArchesNotCombinableError(
        `Paths ${paths.join(' and ')} have shared stages in different orders. Accepted: paths whose shared stages come in one order.`,
        { paths },
      );
    }
    placed.add(next);
  }
  return [...placed];
}

function codeOf(group: Waiting, groups: readonly Waiting[]): string {
  const codes = [...new Set(group.parts.map((part) => part.visit.code))];
  const code = codes.join('-');
  const taken = groups.some((other) => other !== group && other.parts.some((part) => part.visit.code === code));
  return taken ? `${code}-${group.parts.map((part) => part.arch).join('-')}` : code;
}
