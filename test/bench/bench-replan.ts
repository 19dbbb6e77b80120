import { Searches, practiceAfter, type Loss } from '@archwright/casework';
import { seededRandom, type SeededRandom } from '@archwright/kernel';
import type { PracticeSnapshot } from '@archwright/protocol';
import { Clinic, inOrganisation, listOrganisations, loadSnapshot } from '@archwright/records';
import type { DataSource } from 'typeorm';
import { UndoList } from '../../apps/cli/src/start/undo-list.js';
import { NOW, openBenchPractice } from './bench-practice.js';
import { ms, percentile, table } from './figures.js';
import { bookCases, timesAsLarge, type OpenCase } from './open-cases.js';

const SIZES = [50, 200, 1000];
/** Open cases that one demonstration practice has room for. */
const CASES_OF_ONE = 50;
const EVENTS = 40;
const SEED = 20270105;
const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const WEEKS = 17;
const NEIGHBOURS = 8;

/**
 * Seeded disturbances, each on the same practice with all its cases booked: a clinician away for a day, a chair or a bench
 * place out of order, a patient who cancels. Time is that of the search on its thread, what goes there and back included;
 * reading the cases from the database is not.
 */
export async function benchReplan(): Promise<string> {
  const undo = new UndoList();
  try {
    const { db } = await openBenchPractice(undo);
    const searches = new Searches();
    await undo.add(() => searches.close());
    const small = await practiceOf(db);
    const rows: string[][] = [];
    for (const size of SIZES) {
      const practice = timesAsLarge(small, Math.ceil(size / CASES_OF_ONE));
      const cases = bookCases(practice, size, NOW.getTime());
      const figures = row(cases.length, await play(practice, cases, searches));
      // The largest takes minutes; what is known is said before.
      process.stderr.write(`${figures.join(' | ')}\n`);
      rows.push(figures);
    }
    return table(
      [
        'open cases',
        'events',
        'p50, ms',
        'p95, ms',
        'processor p50, ms',
        'p95, ms',
        'moved a visit',
        'visits moved',
        'at the bound',
        'own visits only',
        'cases touched',
        'left',
      ],
      rows,
    );
  } finally {
    await undo.undo();
  }
}

async function practiceOf(db: DataSource): Promise<PracticeSnapshot> {
  const [organisationId = ''] = await listOrganisations(db);
  return inOrganisation(db, organisationId, async (tx) => {
    const clinicIds = (await tx.find(Clinic, { order: { name: 'ASC' } })).map(({ id }) => id);
    const scope = { clinicIds, fromMs: NOW.getTime(), untilMs: NOW.getTime() + WEEKS * 7 * DAY_MS };
    return loadSnapshot(tx, scope, NOW);
  });
}

interface Played {
  readonly wallMs: number;
  /** Of all threads, the collector's included. */
  readonly cpuMs: number;
  readonly movedVisits: number;
  readonly isAtBound: boolean;
  /** No other case than the affected ones changes a visit. */
  readonly isOwnOnly: boolean;
  readonly touched: number;
  readonly left: number;
}

async function play(practice: PracticeSnapshot, cases: readonly OpenCase[], searches: Searches): Promise<Played[]> {
  const random = seededRandom(SEED, cases.length);
  const held = new Map(cases.map((each) => [each.caseId, each.held]));
  const played: Played[] = [];
  while (played.length < EVENTS) {
    const loss = drawLoss(cases, random);
    const affected = affectedBy(loss, cases);
    if (affected.length === 0) continue;
    const toRepair = (each: OpenCase) => stated(each, practiceAfter(practice, loss), loss);
    const [from, cpu] = [performance.now(), process.cpuUsage()];
    const broken = affected.map(toRepair);
    let found = await searches.repair({ broken, neighbours: [], held });
    const inTheWay = [...new Set(found.left.flatMap((each) => each.inTheWay))].slice(0, NEIGHBOURS);
    if (inTheWay.length > 0) {
      const neighbours = cases.filter(({ caseId }) => inTheWay.includes(caseId)).map(toRepair);
      found = await searches.repair({ broken, neighbours, held });
    }
    const wallMs = performance.now() - from;
    const { user, system } = process.cpuUsage(cpu);
    const [first] = found.repairs;
    const ids = affected.map(({ caseId }) => caseId);
    played.push({
      wallMs,
      cpuMs: (user + system) / 1000,
      movedVisits: first?.movedVisits ?? 0,
      isAtBound: first?.movedVisits === first?.leastMovedVisits,
      isOwnOnly: first?.parts.every(({ caseId, movedVisits }) => movedVisits === 0 || ids.includes(caseId)) ?? true,
      touched: first?.parts.length ?? 0,
      left: found.left.length,
    });
  }
  return played;
}

/** From a week ahead, so that everybody can be told. */
function drawLoss(cases: readonly OpenCase[], random: SeededRandom): Loss {
  const { plan, caseId } = pick(cases, random);
  const later = <Item extends { readonly startMs: number }>(items: readonly Item[]): Item =>
    pick(
      items.filter(({ startMs }) => startMs > NOW.getTime() + 7 * DAY_MS),
      random,
    );
  const visit = later(plan.visits);
  const dayMs = Math.floor(visit.startMs / DAY_MS) * DAY_MS;
  const draw = random.nextBelow(20);
  if (draw < 9) return { what: 'resource', id: visit.clinicianId, startMs: dayMs, endMs: dayMs + DAY_MS };
  if (draw < 12)
    return { what: 'resource', id: visit.chairId, startMs: visit.startMs, endMs: visit.startMs + 4 * HOUR_MS };
  const step = later(plan.labSteps.filter(({ placeId }) => placeId !== null));
  if (draw < 16)
    return { what: 'resource', id: step.placeId ?? '', startMs: step.startMs, endMs: step.startMs + DAY_MS };
  return { what: 'visit', id: `${caseId} ${visit.stage}`, startMs: visit.startMs, endMs: visit.endMs };
}

function pick<Item>(items: readonly Item[], random: SeededRandom): Item {
  const item = items[random.nextBelow(Math.max(1, items.length))];
  if (item === undefined) throw new Error('There is nothing to draw from.');
  return item;
}

function affectedBy(loss: Loss, cases: readonly OpenCase[]): OpenCase[] {
  if (loss.what === 'visit') return cases.filter(({ caseId }) => loss.id.startsWith(`${caseId} `));
  return cases.filter(({ held }) =>
    held.get(loss.id)?.some(({ startMs, endMs }) => startMs < loss.endMs && endMs > loss.startMs),
  );
}

/** The case in the practice as it will be; its own booked time is free in it, as everybody's is. */
function stated({ caseId, request, plan }: OpenCase, after: PracticeSnapshot, loss: Loss) {
  const isLost = (stage: string) => loss.what === 'visit' && loss.id === `${caseId} ${stage}`;
  const isOwn = plan.visits.some(({ stage }) => isLost(stage));
  const busy = isOwn ? [{ startMs: loss.startMs, endMs: loss.endMs }] : [];
  const clinics = after.clinics.filter(({ id }) => request.wishes.clinicIds.includes(id));
  return {
    caseId,
    request: { ...request, practice: { ...after, clinics }, patient: { ...request.patient, busy } },
    booked: plan.visits
      .filter(({ stage }) => !isLost(stage))
      .map(({ kits, ...visit }) => ({ ...visit, kitIds: kits.map(({ kitId }) => kitId) })),
    plannedSteps: plan.labSteps,
  };
}

function row(cases: number, played: readonly Played[]): string[] {
  const times = played.map(({ wallMs }) => wallMs);
  const processor = played.map(({ cpuMs }) => cpuMs);
  const share = (holds: (each: Played) => boolean): string =>
    `${((100 * played.filter(holds).length) / played.length).toFixed(0)} %`;
  const mean = (of: (each: Played) => number): string =>
    (played.reduce((sum, each) => sum + of(each), 0) / played.length).toFixed(2);
  return [
    String(cases),
    String(played.length),
    ms(percentile(times, 0.5)),
    ms(percentile(times, 0.95)),
    ms(percentile(processor, 0.5)),
    ms(percentile(processor, 0.95)),
    share(({ movedVisits }) => movedVisits > 0),
    mean(({ movedVisits }) => movedVisits),
    share(({ isAtBound }) => isAtBound),
    share(({ isOwnOnly }) => isOwnOnly),
    mean(({ touched }) => touched),
    String(played.reduce((sum, { left }) => sum + left, 0)),
  ];
}
