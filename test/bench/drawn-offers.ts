import { ChainCache, planOffers, type ChainProblem } from '@archwright/planner';
import { PlanningAxis, toChainProblem } from '@archwright/protocol';
import { drawnPractice, drawnRequest } from './drawn-practice.js';
import { sampleRow, timed, type Sample } from './samples.js';

const SEED = 20270104;
const OFFERS = 5;
/** Clinics, patients asked for with everything kept, and searches with nothing kept. */
const SIZES = [
  { clinics: 1, patients: 300, cold: 20 },
  { clinics: 10, patients: 120, cold: 8 },
  { clinics: 50, patients: 60, cold: 4 },
];
/** Searches before the ones that count: the engine compiles the loops meanwhile. */
const WARM_UP = 600;

/** The front alone, and five offers with ties and reasons, for cases of a drawn practice over 12 weeks of 5-minute slots. */
export function benchDrawnOffers(): string[][] {
  const rows: string[][] = [];
  for (const { clinics, patients, cold } of SIZES) {
    const practice = drawnPractice(clinics, SEED);
    const name = clinics === 1 ? '1 clinic' : `${String(clinics)} clinics`;
    const axisOf = () => {
      const { nowMs, horizonWeeks } = drawnRequest(practice, SEED, 0);
      return new PlanningAxis(nowMs, horizonWeeks);
    };
    const axis = axisOf();
    const translation: Sample[] = [];
    const problems = Array.from({ length: patients }, (_, patient) => {
      const request = drawnRequest(practice, SEED, patient);
      const { result, sample } = timed(() => toChainProblem(request, axis));
      translation.push(sample);
      return result.problem;
    });
    rows.push(sampleRow(`${name}: translation, another patient each time`, translation));
    for (const count of [0, OFFERS]) {
      const what = `${name}: ${count === 0 ? 'front alone' : `front and ${String(count)} offers`}`;
      rows.push(sampleRow(`${what}, cold`, coldSamples(problems.slice(0, cold), count)));
      rows.push(sampleRow(`${what}, warm`, warmSamples(problems, count, Math.ceil(WARM_UP / clinics))));
    }
  }
  return rows;
}

/** Nothing kept from search to search. */
function coldSamples(problems: readonly ChainProblem[], count: number): Sample[] {
  return problems.map((problem) => timed(() => planOffers(problem, count, new ChainCache())).sample);
}

/** Calendars and bookings as before, another patient each time. */
function warmSamples(problems: readonly ChainProblem[], count: number, warmUp: number): Sample[] {
  const cache = new ChainCache();
  const samples: Sample[] = [];
  for (let run = 0; run < warmUp; run += problems.length) {
    for (const problem of problems) planOffers(problem, count, cache);
  }
  for (const problem of problems) samples.push(timed(() => planOffers(problem, count, cache)).sample);
  return samples;
}
