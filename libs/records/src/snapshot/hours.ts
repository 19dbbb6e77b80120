import {
  addDays,
  closedInterval,
  localDate,
  type ClosedDays,
  type Interval,
  type LocalRule,
} from '@archwright/calendar';
import { In, type EntityManager, type FindOptionsWhere } from 'typeorm';
import { CalendarRule, Closure } from '../calendar/calendar.entity.js';
import type { SnapshotScope } from './snapshot-scope.js';

/** Closures that ended this long ago still matter: turnarounds count laboratory days from work received before. */
const CLOSURES_BEFORE_DAYS = 60;

/** Whose hours and closures are read. */
export interface HourSubjects {
  readonly clinicIds: readonly string[];
  readonly practitionerIds: readonly string[];
  readonly laboratoryIds: readonly string[];
  readonly workCentreIds: readonly string[];
  readonly courierIds: readonly string[];
  readonly protectedTimeIds: readonly string[];
  readonly resourceIds: readonly string[];
}

type RuleSubject = 'clinicId' | 'practitionerId' | 'laboratoryId' | 'workCentreId' | 'courierId' | 'protectedTimeId';
type ClosureSubject = 'clinicId' | 'laboratoryId' | 'workCentreId' | 'resourceId';

/** Recurring hours and closures of a practice, by subject. A stored row has no zone: it is the subject's. */
export class PracticeHours {
  constructor(
    private readonly rules: readonly CalendarRule[],
    private readonly closures: readonly Closure[],
  ) {}

  rows(subject: RuleSubject, id: string): readonly CalendarRule[] {
    return this.rules.filter((rule) => rule[subject] === id);
  }

  rulesOf(subject: RuleSubject, id: string, zone: string): LocalRule[] {
    return this.rows(subject, id).map((rule) => toLocalRule(rule, zone));
  }

  closuresOf(subject: ClosureSubject, id: string, zone: string): (ClosedDays | Interval)[] {
    return this.closures.filter((closure) => closure[subject] === id).map((closure) => toClosed(closure, zone));
  }

  /** The same, as exact time: for what has no calendar of its own besides what is taken. */
  closedTimesOf(subject: ClosureSubject, id: string, zone: string): Interval[] {
    return this.closuresOf(subject, id, zone).map((each) => ('zone' in each ? closedInterval(each) : each));
  }
}

export async function loadHours(
  tx: EntityManager,
  subjects: HourSubjects,
  { fromMs, untilMs }: SnapshotScope,
): Promise<PracticeHours> {
  const ruleSubjects: FindOptionsWhere<CalendarRule>[] = [
    { clinicId: In(subjects.clinicIds) },
    { practitionerId: In(subjects.practitionerIds) },
    { laboratoryId: In(subjects.laboratoryIds) },
    { workCentreId: In(subjects.workCentreIds) },
    { courierId: In(subjects.courierIds) },
    { protectedTimeId: In(subjects.protectedTimeIds) },
  ];
  const rules = await tx.find(CalendarRule, { where: ruleSubjects, order: { id: 'ASC' } });
  // Dates are compared a day more generously, since each closure's zone decides where its dates begin.
  const closures = await tx
    .createQueryBuilder(Closure, 'c')
    .where(
      `(c.clinic_id = ANY (:clinicIds) OR c.laboratory_id = ANY (:laboratoryIds)
        OR c.work_centre_id = ANY (:workCentreIds) OR c.resource_id = ANY (:resourceIds))`,
      subjects,
    )
    .andWhere('(c.until_on >= :firstOn AND c.from_on <= :lastOn OR c.ends_at > :from AND c.starts_at < :until)', {
      firstOn: addDays(localDate(fromMs, 'UTC'), -CLOSURES_BEFORE_DAYS),
      lastOn: addDays(localDate(untilMs, 'UTC'), 1),
      from: new Date(fromMs),
      until: new Date(untilMs),
    })
    .orderBy('c.id')
    .getMany();
  return new PracticeHours(rules, closures);
}

export function toLocalRule(
  { startOn, startsLocal, minutes, rrule, exceptLocal }: CalendarRule,
  zone: string,
): LocalRule {
  return { zone, startsLocal: `${startOn}T${startsLocal}`, minutes, rrule, exceptLocal };
}

function toClosed({ id, fromOn, untilOn, startsAt, endsAt }: Closure, zone: string): ClosedDays | Interval {
  if (fromOn !== null && untilOn !== null) return { zone, firstOn: fromOn, lastOn: addDays(untilOn, -1) };
  if (startsAt !== null && endsAt !== null) return { startMs: startsAt.getTime(), endMs: endsAt.getTime() };
  throw new Error(`Closure ${id} has neither dates nor instants, which the database refuses.`);
}
