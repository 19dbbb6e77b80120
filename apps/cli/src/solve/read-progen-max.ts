import type { Activity, Project, StartLag } from '@archwright/planner';
import {
  InstanceFileError,
  lineAt,
  MOST_TIME,
  numberAt,
  requireEnd,
  requireLastLine,
  type InstanceLine,
} from './instance-lines.js';
import { MOST_ACTIVITIES, MOST_PLACES, MOST_RESOURCES, requireProjectTime } from './project-size.js';

/**
 * The text of projects with shortest and longest waits: "n resources 0 0"; for each activity from 0 to n + 1 a line
 * "id modes successors, their ids, their [lags]", a lag from start to start; for each a line "id mode duration needs";
 * the capacities.
 *
 * @throws {InstanceFileError} naming line and reason
 */
export function readProgenMax(lines: readonly InstanceLine[]): Project {
  const head = lineAt(lines, 0, 'the line "activities resources 0 0"');
  const count = numberAt(head, 0, 'the number of activities', [0, MOST_ACTIVITIES]) + 2;
  const resourceCount = numberAt(head, 1, 'the number of resources', [0, MOST_RESOURCES]);
  for (const at of [2, 3]) numberAt(head, at, 'the number of resources that are used up', [0, 0]);
  requireEnd(head, 4);
  const lags = Array.from({ length: count }, (_, id) => lagsIn(activityLine(lines, 1 + id, id), id, count)).flat();
  const activities = Array.from({ length: count }, (_, id): Activity => {
    const line = activityLine(lines, 1 + count + id, id);
    requireEnd(line, 3 + resourceCount);
    return { duration: numberAt(line, 2, 'the duration'), needs: placesIn(line, 3, resourceCount) };
  });
  const last = lineAt(lines, 1 + 2 * count, 'the capacities');
  requireEnd(last, resourceCount);
  requireLastLine(lines, 2 + 2 * count);
  return requireProjectTime({ capacities: placesIn(last, 0, resourceCount), activities, lags }, lines);
}

function activityLine(lines: readonly InstanceLine[], at: number, id: number): InstanceLine {
  const line = lineAt(lines, at, `activity ${String(id)}`);
  numberAt(line, 0, 'the activity', [id, id]);
  numberAt(line, 1, 'the mode, of one,', [1, 1]);
  return line;
}

function lagsIn(line: InstanceLine, from: number, count: number): StartLag[] {
  const own = numberAt(line, 2, 'the number of successors', [0, count]);
  requireEnd(line, 3 + 2 * own);
  return Array.from({ length: own }, (_, at) => ({
    from,
    to: numberAt(line, 3 + at, 'a successor', [0, count - 1]),
    lag: bracketed(line, 3 + own + at),
  }));
}

function bracketed(line: InstanceLine, at: number): number {
  const [, inside] = /^\[(.*)\]$/.exec(line.words[at] ?? '') ?? [];
  if (inside === undefined) {
    throw new InstanceFileError(line.number, `a lag "${line.words[at] ?? ''}" is not accepted. Accepted: such as [5].`);
  }
  return numberAt({ number: line.number, words: [inside] }, 0, 'a lag', [-MOST_TIME, MOST_TIME]);
}

function placesIn(line: InstanceLine, from: number, count: number): number[] {
  return Array.from({ length: count }, (_, resource) => numberAt(line, from + resource, 'places', [0, MOST_PLACES]));
}
