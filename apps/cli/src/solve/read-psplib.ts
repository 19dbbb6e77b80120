import type { Activity, Project, StartLag } from '@archwright/planner';
import { InstanceFileError, lineAt, numberAt, requireEnd, type InstanceLine } from './instance-lines.js';
import { requireProjectTime, MOST_ACTIVITIES, MOST_PLACES, MOST_RESOURCES } from './project-size.js';

/**
 * The single-mode text of the project scheduling library: sections for precedences, durations with needs, and
 * capacities; activities from 1. A successor starts when its predecessor has ended.
 *
 * @throws {InstanceFileError} naming line and reason
 */
export function readPsplib(lines: readonly InstanceLine[]): Project {
  const count = declared(lines, /^jobs /, 'the line "jobs"', MOST_ACTIVITIES);
  const resourceCount = declared(lines, /^- renewable /, 'the line "- renewable"', MOST_RESOURCES);
  for (const other of [/^- nonrenewable /, /^- doubly constrained /]) {
    const line = lines.find(({ words }) => other.test(words.join(' ')));
    if (line !== undefined) numberAfterColon(line, 'the number of resources that are used up', 0);
  }
  const precedences = section(lines, /^PRECEDENCE RELATIONS/, 2);
  const successors = Array.from({ length: count }, (_, id) => {
    const line = lineAt(lines, precedences + id, `the successors of activity ${String(id + 1)}`);
    numberAt(line, 0, 'the activity', [id + 1, id + 1]);
    numberAt(line, 1, 'the number of modes', [1, 1]);
    const own = numberAt(line, 2, 'the number of successors', [0, count]);
    requireEnd(line, 3 + own);
    return Array.from({ length: own }, (_ignored, at) => numberAt(line, 3 + at, 'a successor', [1, count]) - 1);
  });
  requireSectionEnd(lines, precedences + count);
  const requests = section(lines, /^REQUESTS\/DURATIONS/, 3);
  const activities = Array.from({ length: count }, (_, id): Activity => {
    const line = lineAt(lines, requests + id, `the duration of activity ${String(id + 1)}`);
    numberAt(line, 0, 'the activity', [id + 1, id + 1]);
    numberAt(line, 1, 'the mode', [1, 1]);
    requireEnd(line, 3 + resourceCount);
    return { duration: numberAt(line, 2, 'the duration'), needs: placesIn(line, 3, resourceCount) };
  });
  requireSectionEnd(lines, requests + count);
  const availabilities = section(lines, /^RESOURCEAVAILABILITIES/, 2);
  const last = lineAt(lines, availabilities, 'the capacities');
  requireEnd(last, resourceCount);
  requireSectionEnd(lines, availabilities + 1);
  const capacities = placesIn(last, 0, resourceCount);
  const lags = successors.flatMap((own, from) =>
    own.map((to): StartLag => ({ from, to, lag: activities[from]?.duration ?? 0 })),
  );
  return requireProjectTime({ capacities, activities, lags }, lines);
}

function placesIn(line: InstanceLine, from: number, count: number): number[] {
  return Array.from({ length: count }, (_, resource) => numberAt(line, from + resource, 'places', [0, MOST_PLACES]));
}

/** Place of the first line of a section, behind its heading. */
function section(lines: readonly InstanceLine[], title: RegExp, headingLines: number): number {
  const at = lines.findIndex(({ words }) => title.test(words.join(' ')));
  if (at >= 0) return at + headingLines;
  throw new InstanceFileError(lines.at(-1)?.number ?? 1, `the section ${title.source.slice(1)} is missing.`);
}

/** A section that goes on with numbers has more activities than the file says, and nobody knows which is right. */
function requireSectionEnd(lines: readonly InstanceLine[], at: number): void {
  const line = lines[at];
  if (line !== undefined && isNumber(line.words[0]))
    throw new InstanceFileError(line.number, 'the section goes on where it should end.');
}

const isNumber = (word: string | undefined): boolean => /^[+-]?\d/.test(word ?? '');

function declared(lines: readonly InstanceLine[], title: RegExp, name: string, most: number): number {
  const line = lines.find(({ words }) => title.test(words.join(' ')));
  if (line === undefined) throw new InstanceFileError(lines[0]?.number ?? 1, `${name} is missing.`);
  return numberAfterColon(line, name, most);
}

function numberAfterColon(line: InstanceLine, name: string, most: number): number {
  const at = line.words.findIndex((word) => word.endsWith(':')) + 1;
  // A letter may follow, which stands for the kind of resource.
  if (isNumber(line.words[at + 1])) requireEnd(line, at + 1);
  return numberAt(line, at, name, [0, most]);
}
