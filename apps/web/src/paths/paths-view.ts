import type { PathSummary, SetupView } from '@archwright/contracts';
import type { PathGate, PathLag, TimeSpan, TreatmentPath } from '@archwright/protocol';
import { lengthOfTime, shortDate } from '../time/wording.js';
import { localDateOf } from '../time/zone.js';
import { archWords } from '../words/line.js';
import { pathWords as words } from '../words/paths.js';
import { apart, enumerated } from '../words/plural.js';

export interface PathRow {
  readonly id: string;
  readonly title: string;
  readonly version: string;
  readonly isWithdrawn: boolean;
  readonly isLatest: boolean;
  readonly arches: string;
  readonly visits: string;
  readonly published: string;
  readonly openCases: string;
}

export const pathRows = (paths: readonly PathSummary[], zone: string, today: string): PathRow[] =>
  paths.map(({ id, title, version, isWithdrawn, isLatest, arches, visits, publishedAt, publishedBy, openCases }) => {
    const on = shortDate(localDateOf(Date.parse(publishedAt), zone), today);
    return {
      ...{ id, title, isWithdrawn, isLatest },
      version: String(version),
      arches: archWords(arches),
      visits: String(visits),
      published: publishedBy === null ? words.shipped(on) : words.by(on, publishedBy),
      openCases: String(openCases),
    };
  });

export const pathsSentence = (paths: readonly PathSummary[]): string =>
  words.sentence(new Set(paths.map(({ code }) => code)).size, paths.length);

export interface OrderRow {
  readonly id: string;
  readonly part: string;
  readonly cells: readonly string[];
}

/** Every visit and laboratory step in the order of the work, with what it waits for. */
export function orderRows(path: TreatmentPath): OrderRow[] {
  return path.visits.flatMap((visit): OrderRow[] => {
    const { min, typical, max } = visit.chairMinutes;
    const here = { id: visit.code, part: visit.code };
    const visitRow = {
      ...here,
      cells: [
        words.visitOf(visit.title),
        words.minutes(min, typical, max),
        '',
        waitsFor(path.lags, visit.code),
        needsOf(path.gates, visit.code),
      ],
    };
    const phases = path.labPhases.filter(({ after }) => after === visit.code);
    const steps = phases.flatMap(({ steps, turnaround, before }) =>
      steps.map((step, index) => ({
        id: step.code,
        part: step.code,
        cells: [
          words.stepOf(step.title),
          String(step.segments.reduce((sum, { minutes }) => sum + minutes, 0)),
          enumerated(step.after.map(({ code }) => code)),
          index === steps.length - 1
            ? words.turnaround(turnaround.usualMinDays, turnaround.usualMaxDays, turnaround.rushDays, before)
            : '',
          needsOf(path.gates, step.code),
        ],
      })),
    );
    return [visitRow, ...steps];
  });
}

function waitsFor(lags: readonly PathLag[], code: string): string {
  return apart(lags.filter(({ to }) => to === code).map(waitWords));
}

function waitWords({ from, min, max }: PathLag): string {
  if (min !== null && max !== null) return words.waitOf.both(from, spanWords(min), spanWords(max));
  if (min !== null) return words.waitOf.least(from, spanWords(min));
  return max === null ? from : words.waitOf.most(from, spanWords(max));
}

/** A length of time in its own unit. */
export const spanWords = ({ amount, unit }: TimeSpan): string =>
  unit === 'minutes' ? lengthOfTime(amount) : words.spans[unit](amount);

function needsOf(gates: readonly PathGate[], code: string): string {
  return apart(gates.filter(({ before }) => before.code === code).map(({ title }) => title));
}

/** Skills, instruments and benches that a path asks for and the practice does not have. */
export function missingMeans(path: TreatmentPath, have: Means): string[] {
  const visits = path.visits;
  const centres = path.labPhases.flatMap(({ steps }) => steps.map(({ workCentre }) => workCentre));
  const lacking = (asked: readonly string[], known: readonly string[]) =>
    [...new Set(asked)].filter((code) => !known.includes(code));
  return [
    ...lacking(
      visits.flatMap(({ skills }) => skills),
      have.skills,
    ).map(words.means.skill),
    ...lacking(
      visits.flatMap(({ kits }) => kits),
      have.kits,
    ).map(words.means.kit),
    ...lacking(centres, have.workCentres).map(words.means.centre),
  ];
}

export interface Means {
  readonly skills: readonly string[];
  readonly kits: readonly string[];
  readonly workCentres: readonly string[];
}

/** The number that the next version of a path gets; 1 for a code that no path has. */
export function nextVersion(paths: readonly Pick<PathSummary, 'code' | 'version'>[], code: string): number {
  return Math.max(0, ...paths.filter((path) => path.code === code).map(({ version }) => version)) + 1;
}

/** What the practice has in use of all that paths ask for. */
export function meansOf({ entries }: SetupView): Means {
  const records = entries.filter(({ isRetired }) => !isRetired).map(({ record }) => record);
  return {
    skills: records.flatMap((record) => (record.kind === 'person' ? record.skills : [])),
    kits: records.flatMap((record) => (record.kind === 'kit' ? [record.code] : [])),
    workCentres: records.flatMap((record) => (record.kind === 'work-centre' ? [record.code] : [])),
  };
}
