import { Searches } from '@archwright/casework';
import {
  combineArches,
  shippedPaths,
  startProgress,
  type PlanRequest,
  type PracticeSnapshot,
} from '@archwright/protocol';
import { Clinic, inOrganisation, listOrganisations, loadSnapshot } from '@archwright/records';
import type { DataSource } from 'typeorm';
import { UndoList } from '../../apps/cli/src/start/undo-list.js';
import { NOW, openBenchPractice } from './bench-practice.js';
import { benchDrawnOffers } from './drawn-offers.js';
import { table } from './figures.js';
import { SAMPLE_HEAD, sampleRow, waited, type Sample } from './samples.js';

const HORIZON_WEEKS = 16;
const WEEK_MS = 7 * 86_400_000;
const OFFERS = 3;
const RUNS = 40;

/** Time to offers in drawn practices of several sizes; in the demonstration practice to three offers and a repair on a search thread. */
export async function benchOffers(): Promise<string> {
  const undo = new UndoList();
  try {
    const { db } = await openBenchPractice(undo);
    const searches = new Searches();
    await undo.add(() => searches.close());
    const rows: string[][] = [];
    for (const clinics of [1, 2]) {
      const request = await requestFor(db, clinics);
      const name = clinics === 1 ? 'one clinic' : 'demonstration practice, 2 clinics';
      rows.push(...(await onThread(name, request, searches)));
    }
    return `${table(SAMPLE_HEAD, benchDrawnOffers())}\n\n${table(SAMPLE_HEAD, rows)}`;
  } finally {
    await undo.undo();
  }
}

/** A conventional case for both arches whose patient prefers Tuesdays and Thursdays. */
async function requestFor(db: DataSource, clinics: number): Promise<PlanRequest> {
  const practice = await practiceOf(db, clinics);
  const path = shippedPaths.find(({ code }) => code === 'conventional');
  if (path === undefined) throw new Error('The conventional path is shipped.');
  const chain = combineArches({ upper: path, lower: path });
  const clinicIds = practice.clinics.map(({ id }) => id);
  return {
    chain,
    progress: startProgress(chain),
    fixedStages: [],
    fixedSteps: [],
    practice,
    patient: {
      id: 'patient',
      zone: practice.clinics[0]?.zone ?? 'UTC',
      busy: [],
      otherVisits: [],
      wishes: { weekdays: [2, 4], from: null, to: null },
      unavailableOn: [],
      escort: [],
      wheelchairRoom: false,
      travelMinutes: 20,
      chairMinutesPerDay: null,
      homeTravelMinutes: null,
    },
    wishes: { clinicIds, clinicianId: null, laboratoryIds: practice.laboratories.map(({ id }) => id) },
    nowMs: NOW.getTime(),
    notBeforeMs: null,
    horizonWeeks: HORIZON_WEEKS,
    rush: false,
    lagOverrides: {},
    ignoreUnavailable: false,
  };
}

async function practiceOf(db: DataSource, clinics: number): Promise<PracticeSnapshot> {
  const [organisationId = ''] = await listOrganisations(db);
  return inOrganisation(db, organisationId, async (tx) => {
    const all = await tx.find(Clinic, { order: { name: 'ASC' } });
    const clinicIds = all.slice(-clinics).map(({ id }) => id);
    const scope = { clinicIds, fromMs: NOW.getTime(), untilMs: NOW.getTime() + (HORIZON_WEEKS + 1) * WEEK_MS };
    return loadSnapshot(tx, scope, NOW);
  });
}

/** What a caller waits for: copying, translation and search on the thread; then a repair of the first offer's fourth visit. */
async function onThread(name: string, request: PlanRequest, searches: Searches): Promise<string[][]> {
  const offers: Sample[] = [];
  const repairs: Sample[] = [];
  for (let run = 0; run < RUNS; run++) offers.push(await waited(() => searches.offers(request, OFFERS)));
  const lost = lostVisit(request, await searches.offers(request, 1));
  for (let run = 0; run < RUNS; run++) {
    // Five minutes later each time, so that nothing is remembered from the run before.
    const nowMs = request.nowMs + run * 300_000;
    repairs.push(await waited(() => searches.replan({ ...lost, request: { ...lost.request, nowMs } })));
  }
  return [sampleRow(`${name}: offers, on a thread`, offers), sampleRow(`${name}: repair, on a thread`, repairs)];
}

function lostVisit(request: PlanRequest, { found }: Awaited<ReturnType<Searches['offers']>>) {
  const plan = found[0]?.plan;
  const lost = plan?.visits[3];
  if (plan === undefined || lost === undefined) throw new Error('The demonstration practice has offers.');
  const { startMs, endMs } = lost;
  return {
    request: { ...request, patient: { ...request.patient, busy: [{ startMs, endMs }] } },
    booked: plan.visits.map(({ kits, ...visit }) => ({ ...visit, kitIds: kits.map(({ kitId }) => kitId) })),
    plannedSteps: plan.labSteps,
    chosen: null,
  };
}
