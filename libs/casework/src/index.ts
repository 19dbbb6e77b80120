export { type Actor, serviceActor } from './actor.js';
export { NotYoursError, RecordNotFoundError, WrongStateError } from './errors.js';
export { IdempotencyKeys } from './access/idempotency-ledger.js';
export {
  endSession,
  hashPassword,
  resumeSession,
  SessionEndedError,
  signIn,
  SignInRefusedError,
  type SignedIn,
} from './access/sign-in.js';
export { recordAdjustment } from './aftercare/adjustments.js';
export { viewAftercare } from './aftercare/aftercare-view.js';
export { decideRecall } from './aftercare/decide-recall.js';
export { listRecalls } from './aftercare/recall-list.js';
export { decideReferral } from './aftercare/referrals.js';
export { recordHealing, recordSoreSpot } from './aftercare/sore-spots.js';
export { listArrivalChecks, viewArrivalCheck } from './arrivals/arrival-view.js';
export { decideArrival } from './arrivals/decide-arrival.js';
export { alternativesOf } from './booking/alternatives.js';
export { confirmHold } from './booking/confirm-hold.js';
export { dayBoardOf, viewAppointment } from './booking/day-board.js';
export { expireHolds, releaseHold } from './booking/end-hold.js';
export { holdOffer } from './booking/hold-offer.js';
export { isOfferGone, OfferTakenError } from './booking/offer-taken.js';
export { applyRipple, previewCancel, previewMove } from './booking/ripple.js';
export { actOnVisit } from './booking/visit-actions.js';
export { changeCaseState } from './cases/change-state.js';
export { listCases, listLabCases } from './cases/list-cases.js';
export { openCase } from './cases/open-case.js';
export { recordConsent } from './cases/record-consent.js';
export { previewCaseState } from './cases/state-effects.js';
export { viewCase } from './cases/view-case.js';
export { changeVisitPlace } from './cases/visit-place.js';
export { endCaution, listCautions, recordCaution } from './patients/cautions.js';
export { actOnObject } from './custody/act-on-object.js';
export { actOnParcel } from './custody/act-on-parcel.js';
export { declareObjectDisinfected } from './custody/declare-disinfection.js';
export { findMaterialLots, recordMaterialLot } from './custody/material-lots.js';
export { listObjects, viewObject } from './custody/object-view.js';
export { packParcel } from './custody/pack-parcel.js';
export { listParcels, viewParcel } from './custody/parcel-view.js';
export { reconcileParcel } from './custody/reconcile-parcel.js';
export { registerObject } from './custody/register-object.js';
export { findPatients } from './patients/find-patients.js';
export { createPatient, updatePatient } from './patients/keep-patient.js';
export { importPatients, type ImportedPatients } from './patients/import-patients.js';
export { viewPatient } from './patients/view-patient.js';
export { actOnLabStep } from './lab/act-on-step.js';
export { dispatchOf, viewLabStep } from './lab/dispatch.js';
export { loadOf } from './lab/load-view.js';
export { answerLabQuestion } from './lab/questions.js';
export { openQuestionsOf } from './lab/open-questions.js';
export { viewLabCase } from './lab/view-lab-case.js';
export { actOnOrder } from './orders/act-on-order.js';
export { listOrders, viewOrder } from './orders/order-view.js';
export { sendOrder } from './orders/send-order.js';
export { relayOutbox } from './outbox/relay.js';
export { sweep } from './outbox/sweep.js';
export { callListOf, recordCallAttempt } from './reminders/calls.js';
export { deliverNotice } from './reminders/deliver-notice.js';
export { deliverReminder } from './reminders/deliver-reminder.js';
export { giveReply, viewReply, type ReplyPurpose, type ReplyView } from './reminders/patient-reply.js';
export { type Post } from './reminders/post.js';
export { remindersOfCase } from './reminders/reminder-views.js';
export { reconcileReminders, scheduleReminders } from './reminders/schedule.js';
export { planAgain } from './planning/plan-again.js';
export { planCase } from './planning/plan-case.js';
export { findResource, type FoundResource } from './practice/find-resource.js';
export { Searches } from './planning/searches.js';
export { SearchesModule } from './planning/searches.module.js';
export { importResourceCalendar } from './practice/import-calendar.js';
export { practiceView } from './practice/practice-view.js';
export { checkStage } from './capture/check-stage.js';
export { completeStage } from './capture/complete-stage.js';
export { overrideGate } from './capture/override-gate.js';
export { recordCapture } from './capture/record-capture.js';
export { signPrescription } from './capture/sign-prescription.js';
export { viewStageBoard } from './capture/stage-board.js';
export { viewStage } from './capture/stage-view.js';
export { acceptProposal, renewProposal } from './remakes/accept-proposal.js';
export { listAlerts, viewAlert } from './remakes/alert-view.js';
export { dismissAlert, openAlertByPerson } from './remakes/decide-alert.js';
export { proposeReplan } from './remakes/propose-replan.js';
export { PlanStaleError } from './planning/stored-plan.js';
export { decideTransfer } from './transfers/decide-transfer.js';
export { listTransfers, viewTransfer } from './transfers/transfer-view.js';
