import { localDate } from '@archwright/calendar';
import type { CaseSummary } from '@archwright/contracts';
import type { CaseChain } from '@archwright/protocol';
import { CaseArch, Clinic, Hold, PatientIdentity, RemakeAlert, Stage, type TreatmentCase } from '@archwright/records';
import { In, MoreThan, type EntityManager } from 'typeorm';
import { RecordNotFoundError } from '../errors.js';
import { fullName } from '../patients/patient-rows.js';
import { tell } from '../tell.js';
import { caseTitles } from './case-titles.js';
import { caseSentence, deliveryVisit, type CaseSituation } from './case-sentence.js';
import { stageVisits } from './case-visits.js';
import { loadPaths, sharedChains } from './chain.js';

/** A case with everything that its summary and its page are made from. */
export interface CaseOverview {
  readonly treatmentCase: TreatmentCase;
  readonly summary: CaseSummary;
  readonly zone: string;
  readonly chain: CaseChain;
  readonly arches: readonly CaseArch[];
  readonly stages: readonly StageOverview[];
  readonly alerts: readonly RemakeAlert[];
  readonly hold: Hold | null;
}

interface StageOverview {
  readonly row: Stage;
  readonly title: string;
  readonly isDelivery: boolean;
  readonly isReview: boolean;
  readonly chained: boolean;
  readonly visit: CaseSituation['stages'][number]['visit'];
}

/** In the order of the cases given. */
export async function loadOverviews(
  tx: EntityManager,
  cases: readonly TreatmentCase[],
  now: Date,
): Promise<CaseOverview[]> {
  const caseIds = cases.map(({ id }) => id);
  const arches = await tx.find(CaseArch, { where: { caseId: In(caseIds) }, order: { arch: 'DESC' } });
  const versionIds = arches.map(({ pathVersionId }) => pathVersionId);
  const chainOf = sharedChains(await loadPaths(tx, versionIds));
  const stages = await tx.find(Stage, { where: { caseId: In(caseIds) }, order: { position: 'ASC', round: 'ASC' } });
  const visits = await stageVisits(tx, caseIds, now);
  const alerts = await tx.find(RemakeAlert, { where: { caseId: In(caseIds) }, order: { raisedAt: 'ASC', id: 'ASC' } });
  const holds = await tx.findBy(Hold, { caseId: In(caseIds), state: 'active', expiresAt: MoreThan(now) });
  const identities = await tx.findBy(PatientIdentity, { patientId: In(cases.map(({ patientId }) => patientId)) });
  const clinics = await tx.findBy(Clinic, { id: In(cases.map(({ homeClinicId }) => homeClinicId)) });
  const titles = await caseTitles(tx, caseIds);
  return cases.map((treatmentCase) => {
    const { id, patientId, homeClinicId } = treatmentCase;
    const ownArches = arches.filter(({ caseId }) => caseId === id);
    const ownStages = stages.filter(({ caseId }) => caseId === id);
    const chain = chainOf(ownArches, ownStages);
    const identity = identities.find((each) => each.patientId === patientId);
    if (identity === undefined) throw new RecordNotFoundError('patient', patientId);
    const partial = {
      treatmentCase,
      chain,
      zone: clinics.find((clinic) => clinic.id === homeClinicId)?.zone ?? 'UTC',
      arches: ownArches,
      stages: ownStages.map((row) => ({ row, ...stagePart(chain, row), visit: visits.get(row.id) ?? null })),
      alerts: alerts.filter(({ caseId }) => caseId === id),
      hold: holds.find(({ caseId }) => caseId === id) ?? null,
    };
    return { ...partial, summary: summaryOf(partial, identity, titles.get(id) ?? '') };
  });
}

function stagePart(chain: CaseChain, { code }: Stage) {
  const part = chain.stages.find((stage) => stage.code === code);
  return {
    title: part?.title ?? code,
    isDelivery: part?.isDelivery ?? false,
    isReview: part?.isReview ?? false,
    chained: part?.chained ?? true,
  };
}

function summaryOf(
  { treatmentCase, stages, alerts, hold, zone }: Omit<CaseOverview, 'summary'>,
  identity: PatientIdentity,
  title: string,
): CaseSummary {
  const { id, version, number, state, stateReason, reviewOn, patientId } = treatmentCase;
  const situated = stages.map((stage) => ({ ...stage, state: stage.row.state }));
  const undecided = alerts.filter((alert) => alert.state === 'open' || alert.state === 'planned');
  const titleOfStage = (stageId: string) => stages.find(({ row }) => row.id === stageId)?.title ?? '';
  const delivery = deliveryVisit(situated);
  return {
    id,
    version,
    number,
    state,
    title,
    ...tell(
      caseSentence({
        state,
        stateReason,
        reviewOn,
        zone,
        stages: situated,
        alerts: undecided.map(({ stageId, reason }) => ({ stage: titleOfStage(stageId), reason })),
        heldUntil: hold?.expiresAt ?? null,
      }),
    ),
    patient: { id: patientId, name: fullName(identity), birthOn: identity.birthOn, phone: identity.phone },
    deliveryOn: delivery === null ? null : localDate(delivery.startsAt.getTime(), delivery.zone),
  };
}
