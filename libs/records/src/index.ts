export { Organisation, Directory } from './organisation/organisation.entity.js';
export { UserAccount, Session, SignInAttempt, IdempotencyKey } from './access/account.entity.js';
export { Clinic, Resource, Chair, Practitioner, PractitionerClinic, Kit } from './clinic/clinic.entity.js';
export { Laboratory, WorkCentre, BenchPlace, Courier } from './laboratory/laboratory.entity.js';
export { LabExchange, ReceivedOrder, SentOrder } from './laboratory/lab-exchange.entity.js';
export { CalendarRule, Closure, ProtectedTime, ImportedCalendar } from './calendar/calendar.entity.js';
export { Patient, PatientIdentity, PatientNameKey, Consent } from './patient/patient.entity.js';
export { PatientCaution } from './patient/patient-caution.entity.js';
export { TreatmentPathVersion, TreatmentPathWithdrawal } from './case/treatment-path.entity.js';
export { TreatmentCase, CaseArch, Stage, CaseNumberCounter } from './case/treatment-case.entity.js';
export { Plan, Hold } from './case/plan.entity.js';
export { Appointment, AppointmentStage, HomeVisit } from './booking/appointment.entity.js';
export { LabStep, Batch, BatchMember, CourierLeg } from './booking/lab-step.entity.js';
export { Occupancy } from './booking/occupancy.entity.js';
export { Capture, Measurement, Tracing, ChecklistMark } from './capture/capture.entity.js';
export { CheckVerdict, GateOverride, FindingPause, CheckEdition } from './capture/verdict.entity.js';
export { Photograph } from './capture/photograph.entity.js';
export { ToothChoice } from './capture/tooth-choice.entity.js';
export { Device } from './clinic/device.entity.js';
export { BearingScrew } from './clinic/bearing-screw.entity.js';
export { MeasurementSettings } from './capture/measurement-settings.entity.js';
export { Disturbance, DisturbanceProposal } from './disturbance/disturbance.entity.js';
export { RemakeAlert, ReplanProposal } from './remake/remake.entity.js';
export { Prescription, LabQuestion } from './laboratory/prescription.entity.js';
export { CustodyObject, Parcel, ParcelObject, DisinfectionRecord, MaterialLot } from './custody/custody.entity.js';
export { ArrivalCheck } from './custody/arrival-check.entity.js';
export { SoreSpot, Adjustment, ReferralTask, Recall, Transfer } from './aftercare/aftercare.entity.js';
export { Reminder, Notice, CallTask, CallAttempt } from './notice/notice.entity.js';
export { WorkloadProposal, WorkloadRun } from './laboratory/workload.entity.js';
export { ScreeningFinding, ScreeningNight, StageValue } from './screening/screening.entity.js';
export { CaseEvent, Outbox, AuditEntry, AuditSeal } from './history/history.entity.js';
export type { OrganisationSettings, ToothList } from './organisation/organisation-settings.js';
export type { PlannedSegment } from './booking/lab-step.entity.js';
export { openBatch, joinBatch, leaveBatches, type BatchJoiner, type NewBatch } from './booking/batch.js';
export { blockTime, type BlockRequest, type Collision } from './booking/block-time.js';
export { claim, release, type ClaimRequest, type OccupancyOwners } from './booking/claim.js';
export { confirmHeldTime, type FirmPart } from './booking/confirm-hold.js';
export {
  BatchFullError,
  HoldNotActiveError,
  OccupancyConflictError,
  OffGridError,
  type OccupancyConflict,
} from './booking/occupancy-errors.js';
export { nextCaseNumber } from './case/case-number.js';
export { recordAudit, sealAudit, type NewAuditEntry } from './history/audit.js';
export { verifyAudit, type AuditVerification } from './history/verify-audit.js';
export { appendCaseEvent, type NewCaseEvent } from './history/case-event.js';
export { changesSince, type Change, type ChangesSince } from './history/changes-since.js';
export { enqueueOutbox, markDispatched, takeDueOutbox } from './history/outbox.js';
export { loadCaseTimes, type CaseTimes } from './snapshot/case-times.js';
export { loadPatientSnapshot, type PatientScope } from './snapshot/load-patient-snapshot.js';
export { loadSnapshot } from './snapshot/load-snapshot.js';
export type { SnapshotScope } from './snapshot/snapshot-scope.js';
export { createDataSource, type DataSourceSettings } from './tenancy/data-source.js';
export { attemptInOrganisation } from './tenancy/attempt-in-organisation.js';
export {
  inOrganisation,
  listOrganisations,
  readInOrganisation,
  OrganisationIdError,
  type Work,
} from './tenancy/in-organisation.js';
export { uuidv7 } from './uuidv7.js';
