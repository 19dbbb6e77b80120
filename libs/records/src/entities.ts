import { Organisation, Directory } from './organisation/organisation.entity.js';
import { UserAccount, Session, SignInAttempt, IdempotencyKey } from './access/account.entity.js';
import { Clinic, Resource, Chair, Practitioner, PractitionerClinic, Kit } from './clinic/clinic.entity.js';
import { Laboratory, WorkCentre, BenchPlace, Courier } from './laboratory/laboratory.entity.js';
import { LabExchange, ReceivedOrder, SentOrder } from './laboratory/lab-exchange.entity.js';
import { CalendarRule, Closure, ProtectedTime, ImportedCalendar } from './calendar/calendar.entity.js';
import { Patient, PatientIdentity, PatientNameKey, Consent } from './patient/patient.entity.js';
import { PatientCaution } from './patient/patient-caution.entity.js';
import { TreatmentPathVersion, TreatmentPathWithdrawal } from './case/treatment-path.entity.js';
import { TreatmentCase, CaseArch, Stage, CaseNumberCounter } from './case/treatment-case.entity.js';
import { Plan, Hold } from './case/plan.entity.js';
import { Appointment, AppointmentStage, HomeVisit } from './booking/appointment.entity.js';
import { LabStep, Batch, BatchMember, CourierLeg } from './booking/lab-step.entity.js';
import { Occupancy } from './booking/occupancy.entity.js';
import { Capture, Measurement, Tracing, ChecklistMark } from './capture/capture.entity.js';
import { CheckVerdict, GateOverride, FindingPause, CheckEdition } from './capture/verdict.entity.js';
import { Photograph } from './capture/photograph.entity.js';
import { ToothChoice } from './capture/tooth-choice.entity.js';
import { Device } from './clinic/device.entity.js';
import { BearingScrew } from './clinic/bearing-screw.entity.js';
import { MeasurementSettings } from './capture/measurement-settings.entity.js';
import { Disturbance, DisturbanceProposal } from './disturbance/disturbance.entity.js';
import { RemakeAlert, ReplanProposal } from './remake/remake.entity.js';
import { Prescription, LabQuestion } from './laboratory/prescription.entity.js';
import { CustodyObject, Parcel, ParcelObject, DisinfectionRecord, MaterialLot } from './custody/custody.entity.js';
import { ArrivalCheck } from './custody/arrival-check.entity.js';
import { SoreSpot, Adjustment, ReferralTask, Recall, Transfer } from './aftercare/aftercare.entity.js';
import { Reminder, Notice, CallTask, CallAttempt } from './notice/notice.entity.js';
import { ScreeningFinding, ScreeningNight, StageValue } from './screening/screening.entity.js';
import { WorkloadProposal, WorkloadRun } from './laboratory/workload.entity.js';
import { CaseEvent, Outbox, AuditEntry, AuditSeal, AuditUnsealed } from './history/history.entity.js';

/** Every mapped table. */
export const entities = [
  Organisation,
  Directory,
  UserAccount,
  Session,
  SignInAttempt,
  IdempotencyKey,
  Clinic,
  Resource,
  Chair,
  Practitioner,
  PractitionerClinic,
  Kit,
  Laboratory,
  WorkCentre,
  BenchPlace,
  Courier,
  LabExchange,
  SentOrder,
  ReceivedOrder,
  CalendarRule,
  Closure,
  ProtectedTime,
  ImportedCalendar,
  Patient,
  PatientIdentity,
  PatientNameKey,
  Consent,
  PatientCaution,
  TreatmentPathVersion,
  TreatmentPathWithdrawal,
  TreatmentCase,
  CaseArch,
  Stage,
  CaseNumberCounter,
  Plan,
  Hold,
  Appointment,
  AppointmentStage,
  HomeVisit,
  LabStep,
  Batch,
  BatchMember,
  CourierLeg,
  Occupancy,
  Capture,
  Measurement,
  Tracing,
  ChecklistMark,
  CheckVerdict,
  GateOverride,
  FindingPause,
  MeasurementSettings,
  BearingScrew,
  Device,
  Photograph,
  ToothChoice,
  CheckEdition,
  RemakeAlert,
  ReplanProposal,
  Disturbance,
  DisturbanceProposal,
  Prescription,
  LabQuestion,
  CustodyObject,
  Parcel,
  ParcelObject,
  DisinfectionRecord,
  MaterialLot,
  ArrivalCheck,
  SoreSpot,
  Adjustment,
  ReferralTask,
  Recall,
  Transfer,
  Reminder,
  Notice,
  CallTask,
  CallAttempt,
  ScreeningNight,
  ScreeningFinding,
  StageValue,
  WorkloadRun,
  WorkloadProposal,
  CaseEvent,
  Outbox,
  AuditEntry,
  AuditSeal,
  AuditUnsealed,
];
