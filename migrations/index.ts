import { ApplicationRole1795600800000 } from './1795600800000-application-role.js';
import { Organisation1795600860000 } from './1795600860000-organisation.js';
import { ClinicsAndResources1795600920000 } from './1795600920000-clinics-and-resources.js';
import { Laboratories1795600980000 } from './1795600980000-laboratories.js';
import { Calendars1795601040000 } from './1795601040000-calendars.js';
import { Accounts1795601100000 } from './1795601100000-accounts.js';
import { Patients1795601160000 } from './1795601160000-patients.js';
import { Cases1795601220000 } from './1795601220000-cases.js';
import { AppointmentsAndLabWork1795601280000 } from './1795601280000-appointments-and-lab-work.js';
import { Occupancy1795601340000 } from './1795601340000-occupancy.js';
import { CapturesAndChecks1795601400000 } from './1795601400000-captures-and-checks.js';
import { RemakesAndPrescriptions1795601460000 } from './1795601460000-remakes-and-prescriptions.js';
import { Custody1795601520000 } from './1795601520000-custody.js';
import { Aftercare1795601580000 } from './1795601580000-aftercare.js';
import { Notices1795601640000 } from './1795601640000-notices.js';
import { History1795601700000 } from './1795601700000-history.js';
import { LabExchange1795601760000 } from './1795601760000-lab-exchange.js';
import { AftercareFindings1795601845000 } from './1795601845000-aftercare-findings.js';
import { VisitsAtHome1795601905000 } from './1795601905000-visits-at-home.js';
import { PatientCautions1795601965000 } from './1795601965000-patient-cautions.js';
import { ClinicPhone1795601985000 } from './1795601985000-clinic-phone.js';
import { PatientNameKeys1795604940000 } from './1795604940000-patient-name-keys.js';
import { CustodyDeclarations1795605000000 } from './1795605000000-custody-declarations.js';
import { ArrivalChecks1795605060000 } from './1795605060000-arrival-checks.js';
import { LabOrders1795605120000 } from './1795605120000-lab-orders.js';
import { TransferDecisions1795605180000 } from './1795605180000-transfer-decisions.js';
import { OutboxRequest1795607220000 } from './1795607220000-outbox-request.js';
import { IdempotentAnswerText1795607280000 } from './1795607280000-idempotent-answer-text.js';
import { ScreeningFindings1795608000000 } from './1795608000000-screening-findings.js';
import { DrawnTracings1795608600000 } from './1795608600000-drawn-tracings.js';
import { AuditUnsealed1795608900000 } from './1795608900000-audit-unsealed.js';
import { WorkloadRuns1795610000000 } from './1795610000000-workload-runs.js';
import { Disturbances1795611000000 } from './1795611000000-disturbances.js';
import { MeasurementSettings1795612000000 } from './1795612000000-measurement-settings.js';
import { RejudgedChecks1795612060000 } from './1795612060000-rejudged-checks.js';
import { BearingScrews1795612120000 } from './1795612120000-bearing-screws.js';
import { ToothChoices1795612180000 } from './1795612180000-tooth-choices.js';
import { SetupVersions1795614000000 } from './1795614000000-setup-versions.js';
import { ChangeOrder1795615000000 } from './1795615000000-change-order.js';
import { StageValues1795615000031 } from './1795615000031-stage-values.js';
import { Devices1795615000032 } from './1795615000032-devices.js';
import { PatientSex1795615000033 } from './1795615000033-patient-sex.js';
import { ClosuresThatFallOnVisits1795615000034 } from './1795615000034-closures-that-fall-on-visits.js';
import { Photographs1795615000035 } from './1795615000035-photographs.js';
import { FreeVisitProposals1795615000046 } from './1795615000046-free-visit-proposals.js';
import { ReasonsByCode1795615000066 } from './1795615000066-reasons-by-code.js';
import { ReasonsOfCalls1795615000067 } from './1795615000067-reasons-of-calls.js';

/** Every migration, oldest first. */
export const migrations = [
  ApplicationRole1795600800000,
  Organisation1795600860000,
  ClinicsAndResources1795600920000,
  Laboratories1795600980000,
  Calendars1795601040000,
  Accounts1795601100000,
  Patients1795601160000,
  Cases1795601220000,
  AppointmentsAndLabWork1795601280000,
  Occupancy1795601340000,
  CapturesAndChecks1795601400000,
  RemakesAndPrescriptions1795601460000,
  Custody1795601520000,
  Aftercare1795601580000,
  Notices1795601640000,
  History1795601700000,
  LabExchange1795601760000,
  AftercareFindings1795601845000,
  VisitsAtHome1795601905000,
  PatientCautions1795601965000,
  ClinicPhone1795601985000,
  PatientNameKeys1795604940000,
  CustodyDeclarations1795605000000,
  ArrivalChecks1795605060000,
  LabOrders1795605120000,
  TransferDecisions1795605180000,
  OutboxRequest1795607220000,
  IdempotentAnswerText1795607280000,
  ScreeningFindings1795608000000,
  DrawnTracings1795608600000,
  AuditUnsealed1795608900000,
  WorkloadRuns1795610000000,
  Disturbances1795611000000,
  MeasurementSettings1795612000000,
  RejudgedChecks1795612060000,
  BearingScrews1795612120000,
  ToothChoices1795612180000,
  SetupVersions1795614000000,
  ChangeOrder1795615000000,
  StageValues1795615000031,
  Devices1795615000032,
  PatientSex1795615000033,
  ClosuresThatFallOnVisits1795615000034,
  Photographs1795615000035,
  FreeVisitProposals1795615000046,
  ReasonsByCode1795615000066,
  ReasonsOfCalls1795615000067,
];
