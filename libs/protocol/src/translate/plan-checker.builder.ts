import { Temporal } from 'temporal-polyfill';
import type { TimeSpan, TreatmentPath } from '../path-schema.js';
import type { CasePlan } from './plan.js';
import type { PlanRequest } from './request.js';

const MINUTE = 60_000;
type Span = { startMs: number; endMs: number };

/**
 * Everything wrong with a plan of one path, worked out afresh from the path's data and the practice's rules: no code is shared
 * with the translation or the planner.
 */
export function faultsOf(plan: CasePlan, path: TreatmentPath, request: PlanRequest, zone: string): string[] {
  const faults: string[] = [];
  const placed = new Map<string, Span>([
    ...plan.visits.map((each) => [each.stage, each] as const),
    ...plan.labSteps.map((each) => [each.code, each] as const),
  ]);
  const dateOf = (ms: number) => Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(zone).toPlainDate();
  const timeOf = (ms: number) =>
    Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(zone).toPlainTime().toString().slice(0, 5);
  const daysBetween = (a: number, b: number) => dateOf(a).until(dateOf(b)).days;
  const isWeekday = (ms: number) => dateOf(ms).dayOfWeek <= 5;

  const holds = (code: string, from: Span, to: Span, min: TimeSpan | null, max: TimeSpan | null) => {
    const measure = (span: TimeSpan) =>
      span.unit === 'minutes' ? (to.startMs - from.endMs) / MINUTE : daysBetween(from.endMs - 1, to.startMs);
    if (min !== null && measure(min) < min.amount)
      faults.push(`${code}: ${String(measure(min))} below ${String(min.amount)} ${min.unit}`);
    if (max !== null && measure(max) > max.amount)
      faults.push(`${code}: ${String(measure(max))} above ${String(max.amount)} ${max.unit}`);
  };

  /** When those who treat are on their way, there, or on their way back. */
  const awayFor = ({ startMs, endMs, homeTravelMinutes }: CasePlan['visits'][number]): Span => {
    const way = (homeTravelMinutes ?? 0) * MINUTE;
    return { startMs: startMs - way, endMs: endMs + way };
  };
  const away = new Map<string, Span>(plan.visits.map((each) => [each.stage, awayFor(each)]));

  const isOpen = (ms: number) => isWeekday(ms) && timeOf(ms) >= '07:30' && timeOf(ms) < '16:30';
  const single = request.chain.paths.length === 1;

  /** Walks a step through its segments, five minutes at a time: hands-on work rests while the bench is closed. */
  const endOf = (startMs: number, step: TreatmentPath['labPhases'][number]['steps'][number]) => {
    let at = startMs;
    for (const segment of step.segments) {
      const shrunk = single && segment.kind === 'hands-on' ? segment.minutes * step.singleArchFactor : segment.minutes;
      for (let left = Math.ceil(shrunk / 5 - 1e-9); left > 0; at += 5 * MINUTE) {
        if (segment.kind !== 'hands-on' || isOpen(at)) left--;
      }
    }
    return at;
  };

  plan.visits.forEach((visit, index) => {
    const previous = plan.visits[index - 1];
    if (previous !== undefined && visit.startMs < previous.endMs)
      faults.push(`${visit.stage} starts before ${previous.stage} ends`);
    const away = awayFor(visit);
    if (!isWeekday(away.startMs) || timeOf(away.startMs) < '08:00' || timeOf(away.endMs) > '17:00') {
      faults.push(
        `${visit.stage} lies outside opening hours: ${dateOf(visit.startMs).toString()} ${timeOf(visit.startMs)}`,
      );
    }
    if (away.startMs < request.nowMs) faults.push(`${visit.stage} lies in the past`);
    if (visit.startMs % (5 * MINUTE) !== 0) faults.push(`${visit.stage} is off the grid`);
  });
  for (const lag of path.lags) {
    const from = placed.get(lag.from);
    const to = placed.get(lag.to);
    if (from !== undefined && to !== undefined) holds(lag.code, from, to, lag.min, lag.max);
  }
  for (const phase of path.labPhases) {
    const last = phase.steps.at(-1)?.code ?? '';
    for (const step of phase.steps) {
      const own = placed.get(step.code);
      if (own === undefined) {
        faults.push(`${step.code} is missing`);
        continue;
      }
      if (!isOpen(own.startMs)) faults.push(`${step.code} starts while the bench is closed`);
      if (own.endMs !== endOf(own.startMs, step)) faults.push(`${step.code} does not take its minutes`);
      for (const before of step.after) {
        const from = placed.get(before.code);
        if (from === undefined) continue;
        if (own.startMs < from.endMs) faults.push(`${step.code} starts before ${before.code} ends`);
        holds(`${before.code} to ${step.code}`, from, own, before.min, before.max);
      }
    }
    carried(
      phase.code,
      away.get(phase.after),
      away.get(phase.before),
      phase.steps.map((step) => placed.get(step.code)),
    );
    turnedAround(phase.code, placed.get(last)?.endMs ?? 0, phase.turnaround.usualMinDays);
  }

  /** Out at 17:15 and there 14.5 h later, home at 15:00 and there 17 h later, on weekdays. */
  function carried(phase: string, after: Span | undefined, before: Span | undefined, steps: (Span | undefined)[]) {
    const legs = plan.transports.filter((each) => each.phase === phase);
    const first = Math.min(...steps.map((each) => each?.startMs ?? Infinity));
    const ready = Math.max(...steps.map((each) => each?.endMs ?? 0));
    for (const leg of legs) {
      const [at, minutes] = leg.direction === 'to-lab' ? ['17:15', 870] : ['15:00', 1020];
      if (!isWeekday(leg.departsAtMs) || timeOf(leg.departsAtMs) !== at)
        faults.push(`${phase}: no courier leaves then`);
      if (leg.arrivesAtMs - leg.departsAtMs !== minutes * MINUTE)
        faults.push(`${phase}: the courier takes another time`);
      const [from, to] = leg.direction === 'to-lab' ? [after?.endMs ?? Infinity, first] : [ready, before?.startMs ?? 0];
      if (leg.departsAtMs < from || leg.arrivesAtMs > to)
        faults.push(`${phase} ${leg.direction} is not carried in time`);
    }
    if (legs.length !== 2) faults.push(`${phase} is carried ${String(legs.length)} times`);
  }

  /** Weekdays after acceptance; what arrives by 12:00 counts the same day. */
  function turnedAround(phase: string, endMs: number, days: number) {
    const arrived =
      plan.transports.find((each) => each.phase === phase && each.direction === 'to-lab')?.arrivesAtMs ?? 0;
    let date = timeOf(arrived) <= '12:00' ? dateOf(arrived) : dateOf(arrived).add({ days: 1 });
    while (date.dayOfWeek > 5) date = date.add({ days: 1 });
    for (let counted = 0; counted < days; counted++) {
      do date = date.add({ days: 1 });
      while (date.dayOfWeek > 5);
    }
    if (Temporal.PlainDate.compare(dateOf(endMs), date) < 0) faults.push(`${phase} is ready before its turnaround`);
  }

  const taken = new Map<string, Span[]>();
  const take = (resource: string | null, span: Span) => {
    if (resource === null) return;
    const others = taken.get(resource) ?? [];
    if (others.some((other) => other.startMs < span.endMs && span.startMs < other.endMs))
      faults.push(`${resource} is taken twice`);
    taken.set(resource, [...others, span]);
  };
  const [clinic] = request.practice.clinics;
  for (const resource of [...(clinic?.chairs ?? []), ...(clinic?.clinicians ?? []), ...(clinic?.assistants ?? [])]) {
    resource.busy.forEach((span) => {
      take(resource.id, span);
    });
  }
  for (const place of request.practice.laboratories
    .flatMap((each) => each.workCentres)
    .flatMap((each) => each.places)) {
    place.busy.forEach((span) => {
      take(place.id, span);
    });
  }
  for (const visit of plan.visits) {
    if ((visit.homeTravelMinutes === null) !== (visit.chairId !== ''))
      faults.push(`${visit.stage} has no fitting place`);
    for (const id of [visit.chairId, visit.clinicianId, visit.assistantId]) take(id, awayFor(visit));
    for (const kit of visit.kits) take(kit.kitId, { startMs: awayFor(visit).startMs, endMs: kit.readyAtMs });
  }
  for (const step of plan.labSteps) for (const held of step.holds) take(step.placeId, held);
  return faults;
}
