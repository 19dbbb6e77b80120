import type { CasePlan, CaseView, Ripple } from '@archwright/contracts';
import type { Line, LineState } from './line-view.js';

const ms = (instant: string): number => Date.parse(instant);

const couriersOf = (transports: CasePlan['transports']): Line['couriers'] =>
  transports.map(({ direction, departsAt, arrivesAt }) => ({
    direction,
    departMs: ms(departsAt),
    arriveMs: ms(arrivesAt),
  }));

/** A proposed or held plan as a line: nothing of it has happened yet. */
export function lineOfPlan(plan: CasePlan, zone: string, firm: boolean): Line {
  return {
    zone,
    visits: plan.visits.map((visit) => ({
      startMs: ms(visit.startsAt),
      endMs: ms(visit.endsAt),
      title: visit.title,
      state: 'to-come',
      firm,
      againstWish: !visit.asWished,
    })),
    bars: plan.labSteps.map((step) => ({
      startMs: ms(step.startsAt),
      endMs: ms(step.endsAt),
      title: step.title,
      state: 'to-come',
    })),
    couriers: couriersOf(plan.transports),
  };
}

const VISIT_STATE: Record<CaseView['stages'][number]['state'], LineState> = {
  waiting: 'to-come',
  planned: 'to-come',
  ready: 'now',
  'in-progress': 'now',
  passed: 'done',
  repeated: 'done',
  dropped: 'to-come',
};
const STEP_STATE: Record<CaseView['labSteps'][number]['state'], LineState> = {
  unplanned: 'to-come',
  planned: 'to-come',
  ready: 'to-come',
  started: 'now',
  paused: 'now',
  finished: 'done',
  rejected: 'needs-person',
  discarded: 'to-come',
};

/** What the line is drawn from: the case as the clinic or as its laboratory sees it. */
type CaseLine = Pick<CaseView, 'zone' | 'stages' | 'labSteps' | 'transports' | 'alerts'>;

/** The case as it stands: what is done, what is under way, what is to come, where a person has to decide. */
export function lineOfCase(view: CaseLine): Line {
  const alerting = new Set(
    view.alerts.filter((alert) => alert.state === 'open' || alert.state === 'planned').map((alert) => alert.stage),
  );
  return {
    zone: view.zone,
    visits: view.stages
      .filter((stage) => stage.state !== 'dropped')
      .flatMap((stage) =>
        stage.startsAt && stage.endsAt
          ? [
              {
                startMs: ms(stage.startsAt),
                endMs: ms(stage.endsAt),
                title: stage.title,
                state: alerting.has(stage.code) ? ('needs-person' as const) : VISIT_STATE[stage.state],
                firm: stage.appointmentState !== 'held' && stage.appointmentState !== 'provisional',
                againstWish: false,
              },
            ]
          : [],
      ),
    bars: view.labSteps
      .filter((step) => step.state !== 'discarded')
      .flatMap((step) =>
        step.startsAt && step.endsAt
          ? [{ startMs: ms(step.startsAt), endMs: ms(step.endsAt), title: step.title, state: STEP_STATE[step.state] }]
          : [],
      ),
    couriers: couriersOf(view.transports),
  };
}

/** The line before a change: what moves stands where it was, everything else where it stays. */
export function lineBefore(ripple: Ripple, zone: string): Line {
  const after = lineOfPlan(ripple.plan, zone, true);
  const backVisit = new Map(
    ripple.visits.flatMap((change) => (change.after && change.before ? [[ms(change.after), ms(change.before)]] : [])),
  );
  const backStep = new Map(
    ripple.labSteps.flatMap((change) =>
      change.after && change.before
        ? [[`${change.title} ${String(ms(change.after))}`, ms(change.before)] as const]
        : [],
    ),
  );
  const newVisits = new Set(
    ripple.visits.flatMap((change) => (change.before === null && change.after ? [ms(change.after)] : [])),
  );
  return {
    zone,
    visits: [
      ...after.visits
        .filter((visit) => !newVisits.has(visit.startMs))
        .map((visit) => {
          const startMs = backVisit.get(visit.startMs) ?? visit.startMs;
          return { ...visit, startMs, endMs: startMs + visit.endMs - visit.startMs, againstWish: false };
        }),
      ...ripple.visits
        .filter((change) => change.after === null)
        .flatMap((change) =>
          change.before
            ? [
                {
                  startMs: ms(change.before),
                  endMs: ms(change.before),
                  title: change.title,
                  state: 'to-come' as const,
                  firm: true,
                  againstWish: false,
                },
              ]
            : [],
        ),
    ],
    bars: after.bars.map((bar) => {
      const startMs = backStep.get(`${bar.title} ${String(bar.startMs)}`) ?? bar.startMs;
      return { ...bar, startMs, endMs: startMs + bar.endMs - bar.startMs };
    }),
    couriers: [],
  };
}
