import type { Project } from '@archwright/planner';
import { InstanceFileError, type InstanceLine } from './instance-lines.js';

export const MOST_ACTIVITIES = 10_000;
export const MOST_RESOURCES = 100;
export const MOST_PLACES = 1_000_000;
/** The decoder keeps a row of places for every unit of time. */
const MOST_PROJECT_TIME = 1_000_000;

/** @throws {InstanceFileError} when everything in a row takes more units of time than can be kept */
export function requireProjectTime(project: Project, lines: readonly InstanceLine[]): Project {
  const durations = project.activities.reduce((sum, { duration }) => sum + duration, 0);
  const waits = project.lags.reduce(
    (sum, { from, lag }) => sum + Math.max(0, lag - (project.activities[from]?.duration ?? 0)),
    0,
  );
  if (durations + waits <= MOST_PROJECT_TIME) return project;
  throw new InstanceFileError(
    lines.at(-1)?.number ?? 1,
    `all durations and waits together exceed ${String(MOST_PROJECT_TIME)}; give them in a larger unit.`,
  );
}
