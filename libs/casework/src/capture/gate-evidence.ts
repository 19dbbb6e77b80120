import { centricRelationInForce } from '@archwright/measures';
import type { CaseChain, CaseProgress, CaseRecord, GateEvidence } from '@archwright/protocol';
import {
  CheckVerdict,
  ChecklistMark,
  CourierLeg,
  CustodyObject,
  DisinfectionRecord,
  GateOverride,
  ToothChoice,
  type Stage,
  type TreatmentCase,
} from '@archwright/records';
import { In, IsNull, Not, type EntityManager } from 'typeorm';
import type { LoadedChain } from '../cases/chain.js';
import { objectsInClinic, type CaseCustody } from '../custody/objects-in-clinic.js';
import { archOf, loadCaptured, type Captured } from './captured.js';

/** A case with how far it has come. */
export interface CaseRecords {
  readonly treatmentCase: TreatmentCase;
  readonly chain: CaseChain;
  readonly progress: CaseProgress;
  readonly rows: LoadedChain['rows'];
}

/** What is known of a case when its gates are looked at: the goes that still count, with everything recorded at them. */
export async function loadEvidence(tx: EntityManager, records: CaseRecords, now: Date): Promise<GateEvidence> {
  return evidenceOf(records, await loadEvidenceRows(tx, [records]), now);
}

/** Everything recorded that the gates of some cases look at, as rows. */
export interface EvidenceRows {
  readonly captured: ReadonlyMap<string, Captured>;
  readonly marks: readonly ChecklistMark[];
  readonly failed: readonly CheckVerdict[];
  readonly disinfected: readonly DisinfectionRecord[];
  readonly overrides: readonly GateOverride[];
  readonly custody: readonly CustodyObject[];
  readonly legs: readonly CourierLeg[];
  /** Choices of teeth that somebody has decided. */
  readonly teeth: readonly ToothChoice[];
}

/** In as many queries for many cases as for one. */
export async function loadEvidenceRows(tx: EntityManager, records: readonly CaseRecords[]): Promise<EvidenceRows> {
  const stageIds = records.flatMap((each) => stagesThatCount(each).map(({ stage }) => stage.id));
  const at = { stageId: In([...new Set(stageIds)]) };
  const of = { caseId: In([...new Set(records.map(({ treatmentCase }) => treatmentCase.id))]) };
  return {
    captured: await loadCaptured(tx, stageIds),
    marks: await tx.findBy(ChecklistMark, { ...at, done: true }),
    failed: await tx.findBy(CheckVerdict, { ...at, verdict: 'fail', supersededAt: IsNull() }),
    disinfected: await tx.findBy(DisinfectionRecord, at),
    overrides: await tx.findBy(GateOverride, at),
    custody: await tx.findBy(CustodyObject, of),
    legs: await tx.findBy(CourierLeg, { ...of, direction: 'to-clinic' }),
    teeth: await tx.findBy(ToothChoice, { ...at, decidedBy: Not(IsNull()) }),
  };
}

export function evidenceOf(records: CaseRecords, rows: EvidenceRows, now: Date): GateEvidence {
  const counting = stagesThatCount(records);
  const codeOf = new Map(counting.map(({ stage }) => [stage.id, stage.code]));
  const named = <Row extends { stageId: string | null }>(all: readonly Row[]) =>
    all.flatMap((row) => {
      const stage = codeOf.get(row.stageId ?? '');
      return stage === undefined ? [] : [{ row, stage }];
    });
  const marks = named(rows.marks);
  return {
    captures: [
      ...counting.flatMap((each) => capturesOf(each, rows.captured.get(each.stage.id))),
      ...named(rows.teeth).map(({ stage }) => ({ stage, code: 'tooth-selection', arch: null })),
    ],
    checklist: marks.map(({ row, stage }) => ({ stage, code: row.code, count: row.count })),
    failedChecks: named(rows.failed).map(({ row, stage }) => ({ stage, reason: row.reason })),
    passedStages: passedStages(records),
    caseRecords: caseRecords(
      records.treatmentCase,
      marks.some(({ row }) => row.code === 'medicines'),
    ),
    disinfectedStages: named(rows.disinfected).map(({ stage }) => stage),
    objectsInClinic: objectsInClinic(records, custodyOf(records, rows), now),
    overriddenGates: named(rows.overrides).map(({ row }) => row.gate),
  };
}

interface CountingStage {
  readonly stage: Stage;
  /** Arches for which this go still counts. */
  readonly arches: readonly ('upper' | 'lower')[];
}

function stagesThatCount({ progress, rows }: CaseRecords): CountingStage[] {
  return rows.stages.flatMap((stage) => {
    const go = progress.stages.find((each) => each.code === stage.code && each.round === stage.round);
    const arches = stage.arches.filter((arch) => go?.voided.includes(arch) === false);
    return arches.length === 0 || stage.state === 'dropped' ? [] : [{ stage, arches }];
  });
}

function capturesOf({ stage, arches }: CountingStage, captured: Captured | undefined): GateEvidence['captures'] {
  if (captured === undefined) return [];
  const relation = centricRelationInForce({
    ...captured,
    tracings: captured.tracings.map(({ entry }) => entry),
  });
  return [
    ...captured.readings
      .map(({ reading }) => ({ stage: stage.code, code: reading.code, arch: archOf(reading) }))
      .filter(({ arch }) => arch === null || arches.includes(arch)),
    ...(relation === null ? [] : [{ stage: stage.code, code: 'centric-relation', arch: null }]),
  ];
}

/** A stage is passed when every arch that needs it has a go that passed and still counts. */
function passedStages({ chain, progress }: CaseRecords): string[] {
  return chain.stages
    .filter(({ code, arches }) =>
      arches.every((arch) =>
        progress.stages.some(
          (row) =>
            row.code === code && row.state === 'passed' && row.arches.includes(arch) && !row.voided.includes(arch),
        ),
      ),
    )
    .map(({ code }) => code);
}

/** Allergies are asked together with medicines: as a dated answer, or as the examination's checklist line on both. */
function caseRecords(treatmentCase: TreatmentCase, bothTicked: boolean): CaseRecord[] {
  const { consentOn, treatmentApprovedOn, medicinesAskedOn } = treatmentCase;
  const asked = medicinesAskedOn !== null || bothTicked;
  return [
    ...(consentOn === null ? [] : (['consent'] as const)),
    ...(treatmentApprovedOn === null ? [] : (['treatment-approval'] as const)),
    ...(asked ? (['medicines-asked', 'allergies-asked'] as const) : []),
  ];
}

const custodyOf = ({ treatmentCase: { id } }: CaseRecords, { custody, legs }: EvidenceRows): CaseCustody => ({
  custody: custody.filter(({ caseId }) => caseId === id),
  legs: legs.filter(({ caseId }) => caseId === id),
});
