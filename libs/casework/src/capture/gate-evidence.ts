import { centricRelationInForce } from '@archwright/measures';
import type { CaseChain, CaseProgress, CaseRecord, GateEvidence } from '@archwright/protocol';
import {
  CheckVerdict,
  ChecklistMark,
  DisinfectionRecord,
  GateOverride,
  type Stage,
  type TreatmentCase,
} from '@archwright/records';
import { In, IsNull, type EntityManager } from 'typeorm';
import type { LoadedChain } from '../cases/chain.js';
import { archOf, loadCaptured, type Captured } from './captured.js';
import { objectsInClinic } from '../custody/objects-in-clinic.js';

interface CaseRecords {
  readonly treatmentCase: TreatmentCase;
  readonly chain: CaseChain;
  readonly progress: CaseProgress;
  readonly rows: LoadedChain['rows'];
}

/** What is known of a case when its gates are looked at: the goes that still count, with everything recorded at them. */
export async function loadEvidence(tx: EntityManager, records: CaseRecords, now: Date): Promise<GateEvidence> {
  const counting = stagesThatCount(records);
  const ids = counting.map(({ stage }) => stage.id);
  const codeOf = new Map(counting.map(({ stage }) => [stage.id, stage.code]));
  const at = { stageId: In(ids) };
  const captured = await loadCaptured(tx, ids);
  const marks = await tx.findBy(ChecklistMark, { ...at, done: true });
  const failed = await tx.findBy(CheckVerdict, { ...at, verdict: 'fail', supersededAt: IsNull() });
  const disinfected = await tx.findBy(DisinfectionRecord, at);
  const overrides = await tx.findBy(GateOverride, at);
  const named = <Row extends { stageId: string }>(rows: readonly Row[]) =>
    rows.flatMap((row) => {
      const stage = codeOf.get(row.stageId);
      return stage === undefined ? [] : [{ row, stage }];
    });
  return {
    captures: counting.flatMap((each) => capturesOf(each, captured.get(each.stage.id))),
    checklist: named(marks).map(({ row, stage }) => ({ stage, code: row.code, count: row.count })),
    failedChecks: named(failed).map(({ row, stage }) => ({ stage, reason: row.reason })),
    passedStages: passedStages(records),
    caseRecords: caseRecords(
      records.treatmentCase,
      marks.some(({ code }) => code === 'medicines'),
    ),
    disinfectedStages: disinfected.flatMap(({ stageId }) => codeOf.get(stageId ?? '') ?? []),
    objectsInClinic: await objectsInClinic(tx, records.treatmentCase.id, records, now),
    overriddenGates: overrides.map(({ gate }) => gate),
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
  const relation = centricRelationInForce(captured);
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
