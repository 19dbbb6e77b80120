import { addDays, dayNumber, localDate, startOfDayMs } from '@archwright/calendar';
import type { FiguresView } from '@archwright/contracts';
import { Clinic } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { clinicScope } from '../patients/patient-access.js';
import { chartShares, type MonthCount } from './chart-shares.js';
import { chartValues } from './chart-values.js';
import { deliveredCases, type DeliveredCase } from './delivered-cases.js';
import { missedVisits } from './missed-visits.js';
import { useOfTime } from './use-of-time.js';

/** Two years hold enough months for limits and not so many that old ways of working drown the new. Project default. */
const LOOKED_BACK_DAYS = 730;
const USE_DAYS = 28;

/** How the practice does at the actor's clinics: promises, times, visits, remakes, missed visits, use. */
export async function viewFigures(tx: EntityManager, actor: Actor, now: Date): Promise<FiguresView> {
  const scope = clinicScope(actor);
  const clinics = (await tx.find(Clinic, { order: { id: 'ASC' } })).filter(({ id }) => scope?.includes(id) ?? true);
  const zone = clinics[0]?.zone ?? 'UTC';
  const today = localDate(now.getTime(), zone);
  const sinceOn = addDays(today, -LOOKED_BACK_DAYS);
  const since = new Date(startOfDayMs(sinceOn, zone));
  const delivered = await deliveredCases(tx, scope, since);
  const missed = await missedVisits(tx, scope, since);
  const clinicIds = clinics.map(({ id }) => id);
  const period = { fromOn: addDays(today, -USE_DAYS), days: USE_DAYS, zone };
  return {
    today,
    sinceOn,
    shares: [
      {
        key: 'promise-kept',
        ...chartShares(byMonth(delivered, ({ deliveredOn, promisedOn }) => deliveredOn <= promisedOn)),
      },
      { key: 'remake', ...chartShares(byMonth(delivered, ({ isRemade }) => isRemade)) },
      { key: 'missed-visit', ...chartShares(missed) },
    ],
    values: [
      { key: 'lead-time', unit: 'days', ...chartValues(delivered.map((each) => pointOf(each, leadDays(each)))) },
      { key: 'visits-per-case', unit: 'visits', ...chartValues(delivered.map((each) => pointOf(each, each.visits))) },
    ],
    use: {
      fromOn: period.fromOn,
      lastOn: addDays(today, -1),
      rows: await useOfTime(tx, actor, clinicIds, period, now),
    },
  };
}

function byMonth(cases: readonly DeliveredCase[], happened: (one: DeliveredCase) => boolean): MonthCount[] {
  const months = new Map<string, MonthCount>();
  for (const one of cases) {
    const monthOn = `${one.deliveredOn.slice(0, 7)}-01`;
    const { events, size } = months.get(monthOn) ?? { events: 0, size: 0 };
    months.set(monthOn, { monthOn, events: events + (happened(one) ? 1 : 0), size: size + 1 });
  }
  return [...months.values()];
}

const leadDays = ({ openedOn, deliveredOn }: DeliveredCase): number => dayNumber(deliveredOn) - dayNumber(openedOn);

const pointOf = ({ caseId, caseNumber, deliveredOn }: DeliveredCase, value: number) => ({
  ...{ caseId, caseNumber, value },
  on: deliveredOn,
});
