import type { StageView } from '@archwright/contracts';
import { checkSettings, derivedValues, withEarlier, type Reading } from '@archwright/measures';
import { cautions } from '@archwright/protocol';
import { ChecklistMark, PatientIdentity } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { cautionsAtVisit } from '../patients/caution-words.js';
import { overlayInForce } from '../ranges/overlay-in-force.js';
import { tell } from '../tell.js';
import { captureFields } from './capture-fields.js';
import { loadCaptured, type Captured } from './captured.js';
import { viewDevices } from './devices.js';
import { loadEarlier } from './earlier-readings.js';
import { personalFacts } from './judge-stage.js';
import { loadEvidence } from './gate-evidence.js';
import { viewHandOver } from './hand-over-view.js';
import { stageGates, viewGates } from './stage-gates.js';
import { loadStage, type StageRecord } from './stage-record.js';
import { factsOf, loadStandingRows } from './stage-standing.js';
import { viewVisit, visitOfStage } from './stage-visit.js';
import { standingOf } from './standing-of-stage.js';
import { viewTracingKit } from './tracing-kit.js';
import { viewTracing } from './tracing-view.js';
import { viewVerdict } from './verdict-view.js';

/** One visit's work at the chair: what to mind, what is asked for, what was recorded and what the checks say. */
export async function viewStage(tx: EntityManager, actor: Actor, stageId: string, now: Date): Promise<StageView> {
  const record = await loadStage(tx, actor, stageId);
  const { stage, treatmentCase, part } = record;
  const captured = (await loadCaptured(tx, [stageId])).get(stageId);
  const evidence = await loadEvidence(tx, record, now);
  const gates = stageGates(record.chain, stage.code, evidence);
  const rows = await loadStandingRows(tx, [record]);
  const facts = factsOf(record, gates, evidence, rows);
  const standing = standingOf(facts);
  const overlay = await overlayInForce(tx);
  const earlier = await loadEarlier(tx, { stage, stages: record.rows.stages });
  const visit = await visitOfStage(tx, stageId);
  const identity = await tx.findOneBy(PatientIdentity, { patientId: treatmentCase.patientId });
  return {
    id: stage.id,
    version: stage.version,
    caseId: stage.caseId,
    caseNumber: treatmentCase.number,
    patientName: identity === null ? '(erased)' : `${identity.givenName} ${identity.familyName}`,
    birthOn: identity?.birthOn ?? ERASED_BIRTH,
    sex: identity?.sex ?? null,
    code: stage.code,
    title: part.title,
    round: stage.round,
    arches: stage.arches,
    state: stage.state,
    ...(await viewVisit(tx, record)),
    devices: await viewDevices(tx, visit?.clinicId ?? treatmentCase.homeClinicId, visit),
    tracingKit: await viewTracingKit(tx, stageId),
    milestones: [...part.milestones],
    overlay,
    cautions: [...(await cautionsAtVisit(tx, treatmentCase.patientId)), ...cautionTexts(part.cautions)],
    checklist: await checklistOf(tx, record),
    fields: captureFields(part, stage, checkSettings(overlay), personalFacts(identity)),
    ...recordedIn(
      captured,
      earlier.map(({ reading }) => reading),
    ),
    earlier: earlier.map(({ reading, at, stage: takenAt }) => ({ ...viewReading(reading, at), stage: takenAt })),
    verdicts: rows.verdicts.map(viewVerdict),
    checking: facts.checking,
    gates: await viewGates(tx, record, gates),
    alertId: rows.alerts.find((alert) => alert.stageId === stageId)?.id ?? null,
    prescription: await viewHandOver(tx, record),
    mayGoOn: standing.verdict === 'may-go-on',
    ...tell(standing.reason),
  };
}

/** Shown in place of the birth date of an erased patient: no date of a living person. */
const ERASED_BIRTH = '1900-01-01';

const cautionTexts = (codes: readonly string[]): StageView['cautions'] =>
  codes.flatMap((code) => {
    const caution = cautions.find((each) => each.code === code);
    return caution === undefined ? [] : [{ code, text: `${caution.hazard}: ${caution.text}` }];
  });

async function checklistOf(tx: EntityManager, { part, stage }: StageRecord): Promise<StageView['checklist']> {
  const marks = await tx.findBy(ChecklistMark, { stageId: stage.id });
  return part.checklist.map(({ code, text, counted }) => {
    const mark = marks.find((each) => each.code === code);
    return { code, text, counted, done: mark?.done ?? false, count: mark?.count ?? null };
  });
}

type Recorded = Pick<StageView, 'readings' | 'derived' | 'tracings' | 'otherCentricRelation'>;

function recordedIn(captured: Captured | undefined, earlier: readonly Reading[]): Recorded {
  if (captured === undefined) return { readings: [], derived: [], tracings: [], otherCentricRelation: [] };
  const { readings, tracings, otherCentricRelation } = captured;
  const known = withEarlier(
    readings.map(({ reading }) => reading),
    earlier,
  );
  return {
    readings: readings.map(({ reading, at }) => viewReading(reading, at)),
    derived: derivedValues(known).map(({ code, name, value, unit }) => ({ code, name, value, unit })),
    tracings: tracings.map(viewTracing),
    otherCentricRelation: otherCentricRelation.map(({ method, occlusalVerticalDimension, closures }) => ({
      method,
      ...(occlusalVerticalDimension === undefined ? {} : { occlusalVerticalDimension }),
      ...(closures === undefined ? {} : { closures }),
    })),
  };
}

function viewReading({ method, ...rest }: Reading, at: Date): StageView['readings'][number] {
  return { ...rest, ...(method === undefined ? {} : { method: { ...method } }), at: at.toISOString() };
}
