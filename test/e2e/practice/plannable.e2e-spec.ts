import { ChainCache, replanChain } from '@archwright/planner';
import {
  combineArches,
  shippedPaths,
  startProgress,
  toChainProblem,
  type PracticeSnapshot,
} from '@archwright/protocol';
import { Clinic, loadSnapshot } from '@archwright/records';
import { nth } from '../records/records-practice.js';
import { NOW } from './demo-api.js';
import { openDemoRows, type DemoRows } from './demo-practice.js';

const WEEK_MS = 604_800_000;
const HORIZON_WEEKS = 12;

let demo: DemoRows;
beforeAll(async () => {
  demo = await openDemoRows();
}, 60_000);
afterAll(() => demo.close());

const read = (weeks: number): Promise<PracticeSnapshot> =>
  demo.work(async (tx) => {
    const clinicIds = (await tx.find(Clinic, { order: { id: 'ASC' } })).map(({ id }) => id);
    return loadSnapshot(tx, { clinicIds, fromMs: NOW.getTime(), untilMs: NOW.getTime() + weeks * WEEK_MS }, NOW);
  });

describe('the demonstration practice', () => {
  it('holds the skills, kits and benches that every shipped path asks for', async () => {
    const { clinics, laboratories } = await read(1);
    const [{ kits, clinicians }, { workCentres }] = [nth(clinics, 0), nth(laboratories, 0)];
    const benches = workCentres.map(({ code }) => code);
    const kitCodes = kits.map(({ code }) => code);
    for (const { visits, labPhases } of shippedPaths) {
      expect(benches).toEqual(
        expect.arrayContaining(labPhases.flatMap(({ steps }) => steps.map((each) => each.workCentre))),
      );
      expect(kitCodes).toEqual(expect.arrayContaining(visits.flatMap((visit) => visit.kits)));
      for (const visit of visits) {
        const able = clinicians.filter(({ skills }) => visit.skills.every((skill) => skills.includes(skill)));
        expect(able).not.toEqual([]);
      }
    }
  });

  it('lets a whole treatment be planned', async () => {
    const nowMs = NOW.getTime();
    const practice = await read(HORIZON_WEEKS + 1);
    const path = nth(
      shippedPaths.filter(({ code }) => code === 'digital-printed-bases'),
      0,
    );
    const chain = combineArches({ upper: path, lower: path });
    const wishes = { weekdays: [], from: null, to: null };
    const { problem } = toChainProblem({
      chain,
      progress: startProgress(chain),
      fixedStages: [],
      fixedSteps: [],
      practice,
      patient: {
        id: 'patient',
        zone: 'Europe/London',
        busy: [],
        otherVisits: [],
        wishes,
        unavailableOn: [],
        escort: [],
        wheelchairRoom: false,
        travelMinutes: 0,
        chairMinutesPerDay: null,
        homeTravelMinutes: null,
      },
      wishes: {
        clinicIds: practice.clinics.map(({ id }) => id),
        clinicianId: null,
        laboratoryIds: practice.laboratories.map(({ id }) => id),
      },
      nowMs,
      notBeforeMs: null,
      horizonWeeks: HORIZON_WEEKS,
      rush: false,
      lagOverrides: {},
      ignoreUnavailable: false,
    });
    expect(
      replanChain(
        problem,
        problem.visits.map(() => null),
        'fewest-moves',
        1,
        new ChainCache(),
      ),
    ).toHaveLength(1);
  });
});
