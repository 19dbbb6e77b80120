import { viewStageBoard, type Actor } from '@archwright/casework';
import { Appointment, AppointmentStage, CaseArch, LabStep, Stage, TreatmentCase, uuidv7 } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { NOW, bookedCase, found, openBookingPractice, type BookingPractice } from './booking-practice.js';

const LONG_MS = 120_000;
const CASES = 40;

describe('the stage board of a full day', () => {
  let practice: BookingPractice;
  let caseId: string;
  let on: string;

  beforeAll(async () => {
    practice = await openBookingPractice();
    const booked = await bookedCase(practice, { path: 'digital-printed-bases' });
    caseId = booked.id;
    on = found(booked.stages[0]?.startsAt).slice(0, 10);
  }, LONG_MS);
  afterAll(async () => {
    await practice.close();
  });

  const board = (tx: EntityManager) => {
    const actor: Actor = {
      organisationId: practice.organisationId,
      userId: uuidv7(),
      role: 'clinician',
      clinicIds: practice.practice.clinics.map(({ id }) => id),
      laboratoryIds: [],
      practitionerId: null,
    };
    return viewStageBoard(tx, actor, { on }, NOW);
  };

  /** The board's cards, how often it asked the database, and how long it took. */
  const measured = () =>
    practice.rows(async (tx) => {
      const asked = countQueries(tx);
      const from = performance.now();
      const { cards } = await board(tx);
      return { cards: cards.length, queries: asked(), ms: Math.round(performance.now() - from) };
    });

  it(
    'asks the database as often for forty cases as for one',
    async () => {
      const one = await measured();
      expect(one.cards).toBe(1);
      await practice.rows((tx) => copyCase(tx, caseId, CASES - 1));
      const many = await measured();
      expect(many.cards).toBe(CASES);
      expect(many.queries).toBe(one.queries);
      expect(many.queries).toBeLessThanOrEqual(25);
    },
    LONG_MS,
  );
});

/** Counts what goes over the transaction's connection from now on. */
function countQueries(tx: EntityManager): () => number {
  const runner = found(tx.queryRunner);
  const query = runner.query.bind(runner);
  let count = 0;
  runner.query = ((...given: Parameters<typeof query>) => {
    count += 1;
    return query(...given);
  }) as typeof runner.query;
  return () => {
    runner.query = query;
    return count;
  };
}

const copyOf = <Row extends object>(row: Row, change: Partial<Row>): Row => Object.assign({}, row, change);

/** The same case again under other numbers, at the same times; copies hold no chair, since one chair serves one. */
async function copyCase(tx: EntityManager, caseId: string, copies: number): Promise<void> {
  const original = await tx.findOneByOrFail(TreatmentCase, { id: caseId });
  const arches = await tx.findBy(CaseArch, { caseId });
  const stages = await tx.findBy(Stage, { caseId });
  const steps = await tx.findBy(LabStep, { caseId });
  for (let copy = 1; copy <= copies; copy++) {
    const id = uuidv7();
    await tx.insert(
      TreatmentCase,
      copyOf(original, { id, number: `${original.number.slice(0, 3)}${String(9000 + copy)}` }),
    );
    await tx.insert(
      CaseArch,
      arches.map((row) => copyOf(row, { id: uuidv7(), caseId: id })),
    );
    await tx.insert(
      LabStep,
      steps.map((row) => copyOf(row, { id: uuidv7(), caseId: id })),
    );
    for (const stage of stages) {
      const stageId = uuidv7();
      await tx.insert(Stage, copyOf(stage, { id: stageId, caseId: id }));
      for (const link of await tx.findBy(AppointmentStage, { stageId: stage.id })) {
        const visit = await tx.findOneByOrFail(Appointment, { id: link.appointmentId });
        const appointmentId = uuidv7();
        await tx.insert(Appointment, copyOf(visit, { id: appointmentId, uid: `${visit.uid}-${String(copy)}` }));
        await tx.insert(AppointmentStage, { id: uuidv7(), appointmentId, stageId });
      }
    }
  }
}
