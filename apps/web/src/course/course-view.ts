import type { CaseCourse } from '@archwright/contracts';
import { dateAndTime, shortDate } from '../time/wording.js';
import { daysBetween, localDateOf } from '../time/zone.js';
import { caseWords } from '../words/case.js';
import { stageWords } from '../words/chair.js';
import { courseWords as words } from '../words/course.js';
import { archWords, lineWords } from '../words/line.js';
import { enumerated, languageName, spelled } from '../words/plural.js';

type Visit = CaseCourse['visits'][number];
type LabStep = CaseCourse['labSteps'][number];
type Measured = CaseCourse['measurements'][number];

export interface HappenedRow {
  key: string;
  what: string;
  detail: string;
  first: string;
  /** When it took place, or is planned for now; with its state where it did not take its course. */
  then: string;
  /** Whole days later than it was planned first, by the calendar of the clinic; negative for earlier. */
  daysLater: number | null;
}

/** Every visit with the laboratory work after it, in the order of the treatment. */
export function happenedRows({ visits, labSteps, zone }: CaseCourse, today: string): HappenedRow[] {
  const shown = new Set<string>();
  const rowOf = (part: Visit | LabStep, key: string, about: string): HappenedRow => ({
    key,
    what: part.title,
    detail: [about, part.round > 1 ? caseWords.round(part.round) : ''].filter(Boolean).join(', '),
    ...whenOf(part, zone, today),
  });
  return visits.flatMap((visit) => {
    const isFirst = !shown.has(visit.code);
    shown.add(visit.code);
    // What is made after a visit that was repeated stands once, after its first go, each round with its number.
    const after = isFirst ? labSteps.filter(({ afterStage }) => afterStage === visit.code) : [];
    return [
      rowOf(visit, visit.stageId, visit.clinicianName ?? ''),
      ...after.map((step) => rowOf(step, step.id, archWords(step.arches))),
    ];
  });
}

function whenOf(part: Visit | LabStep, zone: string, today: string): Pick<HappenedRow, 'first' | 'then' | 'daysLater'> {
  const { firstPlannedAt, plannedAt, startedAt, finishedAt } = part;
  const happenedAt = startedAt ?? finishedAt;
  const at = happenedAt ?? plannedAt;
  const ended = endOf(part);
  const say = (instant: string): string => dateAndTime(instant, zone, today);
  const day = (instant: string): string => localDateOf(Date.parse(instant), zone);
  const state = ended ?? (happenedAt === null ? caseWords.step.planned : null);
  // What will not take place as planned is not late.
  const counted = ended === null ? at : happenedAt;
  return {
    first: firstPlannedAt === null ? words.notAtFirst : say(firstPlannedAt),
    then: at === null ? (ended ?? words.notPlanned) : state === null ? say(at) : words.whenAndState(say(at), state),
    daysLater: firstPlannedAt === null || counted === null ? null : daysBetween(day(firstPlannedAt), day(counted)),
  };
}

/** How a part came to nothing, in words; null for one that is still to come or took its course. */
function endOf(part: Visit | LabStep): string | null {
  if (part.state === 'dropped') return caseWords.stage.dropped;
  if (part.state === 'rejected' || part.state === 'discarded') return caseWords.step[part.state];
  return 'appointmentState' in part && part.appointmentState === 'missed' ? caseWords.missed : null;
}

export interface MeasuredTable {
  columns: string[];
  rows: { id: string; name: string; how: string; cells: string[] }[];
}

/** Measurements by visits; visits without any have no column. */
export function measuredTable({ visits, measurements, zone }: CaseCourse, today: string): MeasuredTable {
  const taken = new Set(measurements.flatMap(({ values }) => values.map(({ stageId }) => stageId)));
  const measuring = visits.filter(({ stageId }) => taken.has(stageId));
  const firstAt = (stageId: string): string =>
    measurements
      .flatMap(({ values }) => values.filter((each) => each.stageId === stageId).map(({ at }) => at))
      .sort()[0] ?? '';
  return {
    columns: measuring.map(({ stageId, title, round }) =>
      words.column(
        shortDate(localDateOf(Date.parse(firstAt(stageId)), zone), today),
        round > 1 ? enumerated([title, caseWords.round(round)]) : title,
      ),
    ),
    rows: measurements.map((measured, index) => ({
      id: `${measured.code} ${String(index)}`,
      name: nameOf(measured),
      how: enumerated(
        Object.entries(measured.method).map(([key, answer]) =>
          key === 'language' ? languageName(answer) : spelled(answer),
        ),
      ),
      cells: measuring.map(({ stageId }) => {
        const found = measured.values.find((each) => each.stageId === stageId);
        return found === undefined ? '' : valueIn(found.value, measured.unit);
      }),
    })),
  };
}

function nameOf({ name, arch, side, region }: Measured): string {
  const place = [arch ? lineWords.arch[arch] : '', side ? stageWords.side[side] : '', region ? spelled(region) : ''];
  const known = place.filter(Boolean);
  return known.length === 0 ? name : words.nameOf(name, enumerated(known));
}

function valueIn(value: Measured['values'][number]['value'], unit: string | null): string {
  if (typeof value === 'boolean') return value ? words.yes : words.no;
  if (typeof value === 'object') return value.label;
  const rounded = Math.round(value * 100) / 100;
  return unit === null ? String(rounded) : words.amount(rounded, spelled(unit));
}

export const tracedVisits = ({ visits }: CaseCourse): Visit[] => visits.filter(({ tracings }) => tracings.length > 0);
