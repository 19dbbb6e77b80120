import { screenCapture, screenNight } from '@archwright/casework';
import { seededRandom } from '@archwright/kernel';
import {
  Capture,
  Clinic,
  Measurement,
  ScreeningFinding,
  ScreeningNight,
  UserAccount,
  inOrganisation,
  listOrganisations,
  uuidv7,
} from '@archwright/records';
import { normalQuantile } from '@archwright/screening';
import { In, type DataSource } from 'typeorm';
import { UndoList } from '../../apps/cli/src/start/undo-list.js';
import { writeMeasured } from '../support/measured-patients.js';
import { NOW, openBenchPractice } from './bench-practice.js';
import { ms, percentile, table } from './figures.js';

const PATIENTS_PER_CODE = 10_000;
const PEOPLE = 4;
const RUNS = 20;
const HOUR_MS = 3_600_000;
const METHOD = { landmarks: 'subnasale-gnathion' };
const VERTICAL = 'vertical-dimension-at-rest';
/** Ten measurements in millimetres, each of as many patients. */
const CODES = [
  VERTICAL,
  'occlusal-vertical-dimension',
  'old-denture-occlusal-vertical-dimension',
  'preliminary-occlusal-vertical-dimension',
  'swallow-vertical-dimension',
  'closest-speaking-space',
  'upper-facial-third',
  'middle-facial-third',
  'lower-facial-third',
  'interalar-width',
];

/** A night over 100,000 values, and one new value beside 10,000 other patients. */
export async function benchScreening(): Promise<string> {
  const undo = new UndoList();
  try {
    const { db } = await openBenchPractice(undo);
    const [organisationId = ''] = await listOrganisations(db);
    await writeValues(db, organisationId);
    const nights = [await night(db, organisationId, 0), await night(db, organisationId, 1)];
    const captures = await values(db, organisationId);
    return table(
      ['what', 'first, ms', 'p50, ms', 'p95, ms', 'heap at most, MB', 'findings', 'runs'],
      [row('a night over 100,000 values', nights), row('one new value beside 10,000 other patients', captures)],
    );
  } finally {
    await undo.undo();
  }
}

async function writeValues(db: DataSource, organisationId: string): Promise<void> {
  const random = seededRandom(2027);
  await inOrganisation(db, organisationId, async (tx) => {
    const clinics = await tx.find(Clinic, { order: { name: 'ASC' } });
    const people = await tx.find(UserAccount, { order: { id: 'ASC' }, take: PEOPLE });
    let firstNumber = 0;
    for (const code of CODES) {
      for (const [at, { id: recordedBy }] of people.entries()) {
        const count = PATIENTS_PER_CODE / PEOPLE;
        const drawn = Array.from({ length: count }, () => {
          const z = normalQuantile((random.nextUint32() + 0.5) / 0x1_0000_0000);
          return Math.round(2 * (65 + 4 * z)) / 2;
        });
        const clinicId = clinics[at % clinics.length]?.id ?? '';
        const from = new Date(NOW.getTime() - (count + 1) * HOUR_MS);
        await writeMeasured(tx, {
          clinicId,
          recordedBy,
          code,
          unit: 'mm',
          method: code === VERTICAL ? METHOD : null,
          values: drawn,
          from,
          firstNumber,
        });
        firstNumber += count;
      }
    }
  });
  await db.query('ANALYZE');
}

interface Sample {
  readonly wallMs: number;
  readonly heapMb: number;
  readonly findings: number;
}

const night = (db: DataSource, organisationId: string, on: number): Promise<Sample> => {
  const startedAt = new Date(NOW.getTime() + on * 86_400_000);
  const nightId = uuidv7();
  return measured(
    db,
    organisationId,
    () =>
      inOrganisation(db, organisationId, (tx) =>
        tx.insert(ScreeningNight, { id: nightId, nightOn: startedAt.toISOString().slice(0, 10), startedAt }),
      ),
    () => inOrganisation(db, organisationId, (tx) => screenNight(tx, { organisationId, nightId }, startedAt)),
  );
};

/** The values recorded last, each screened as if it were new. */
async function values(db: DataSource, organisationId: string): Promise<Sample[]> {
  const captures = await inOrganisation(db, organisationId, async (tx) => {
    const last = await tx.find(Measurement, { where: { code: VERTICAL }, order: { recordedAt: 'DESC' }, take: RUNS });
    return last.map(({ captureId }) => captureId);
  });
  const samples: Sample[] = [];
  for (const captureId of captures) {
    samples.push(
      await measured(
        db,
        organisationId,
        () =>
          inOrganisation(db, organisationId, (tx) => tx.update(Capture, { id: In([captureId]) }, { screenedAt: null })),
        () => inOrganisation(db, organisationId, (tx) => screenCapture(tx, { organisationId, captureId }, NOW)),
      ),
    );
  }
  return samples;
}

async function measured(
  db: DataSource,
  organisationId: string,
  prepare: () => Promise<unknown>,
  work: () => Promise<unknown>,
): Promise<Sample> {
  const count = () => inOrganisation(db, organisationId, (tx) => tx.count(ScreeningFinding));
  await prepare();
  const before = await count();
  let heap = 0;
  const look = () => {
    heap = Math.max(heap, process.memoryUsage().heapUsed);
  };
  const watch = setInterval(look, 5);
  const from = performance.now();
  await work();
  const wallMs = performance.now() - from;
  look();
  clearInterval(watch);
  return { wallMs, heapMb: heap / 2 ** 20, findings: (await count()) - before };
}

function row(what: string, samples: readonly Sample[]): string[] {
  const [first, ...later] = samples;
  const wall = later.map(({ wallMs }) => wallMs);
  const total = samples.reduce((sum, { findings }) => sum + findings, 0);
  return [
    what,
    ms(first?.wallMs ?? NaN),
    ms(percentile(wall, 0.5)),
    ms(percentile(wall, 0.95)),
    ms(Math.max(...samples.map(({ heapMb }) => heapMb))),
    String(total),
    String(samples.length),
  ];
}
