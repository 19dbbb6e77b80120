import { z } from 'zod';
import { ripple } from './appointment.js';
import { deliveredText } from './delivered.js';
import { id, instant, sentence, version, zoneName } from './primitives.js';

/**
 * What can fall away: the time of a person, chair, kit or bench place (`resource`), of a clinic, work centre or laboratory,
 * the runs of a courier; work that is not ready before an instant (`lab-step`); a visit whose patient does not come.
 */
const lost = z.enum(['resource', 'clinic', 'work-centre', 'laboratory', 'courier', 'lab-step', 'visit']);

/** Something of the caller's clinics and their laboratories that time can be taken away from. */
export const disturbanceSubject = z.object({
  what: lost,
  id,
  kind: z.enum(['clinician', 'assistant', 'chair', 'kit', 'place', 'clinic', 'work-centre', 'laboratory', 'courier']),
  label: z.string(),
  /** The clinic or laboratory that it belongs to; of a person, all of them. */
  at: z.string(),
  zone: zoneName,
});
export type DisturbanceSubject = z.output<typeof disturbanceSubject>;
export const disturbanceSubjects = z.object({ items: z.array(disturbanceSubject) });
export type DisturbanceSubjects = z.output<typeof disturbanceSubjects>;

/** Entering it moves and blocks nothing: it shows who is affected and has plans looked for. */
export const enterDisturbance = z.strictObject({
  what: lost,
  id,
  startsAt: instant,
  /** Of late work: when it is ready. Of a visit: from when the patient can come again. */
  endsAt: instant,
  reason: sentence,
});
export type EnterDisturbance = z.output<typeof enterDisturbance>;

/**
 * How far a repair reaches: everything keeps its time (somebody else steps in); laboratory work uses its slack; it is put
 * in another order; visits of the affected cases move; another case makes room; the affected cases were planned anew
 * beside each other in several orders.
 */
export const repairReach = z.enum([
  'kept',
  'absorbed',
  'resequenced',
  'visits-moved',
  'others-make-room',
  'planned-together',
]);

export const disturbanceState = z.enum(['open', 'planned', 'accepted', 'kept', 'withdrawn']);

const caseName = z.object({
  caseId: id,
  caseNumber: z.string(),
  /** Empty for a case of other clinics. */
  patientName: z.string(),
});

export const disturbanceView = z.object({
  id,
  version,
  what: lost,
  label: z.string(),
  zone: zoneName,
  startsAt: instant,
  endsAt: instant,
  reason: z.string(),
  /** It comes of a closure that is in force; taking that away withdraws it. */
  isClosed: z.boolean(),
  state: disturbanceState,
  enteredAt: instant,
  /** Open cases that it falls on, the one that it reaches first leading; empty once it is decided. */
  affected: z.array(
    caseName.extend({
      visits: z.array(
        z.object({
          appointmentId: id,
          title: deliveredText,
          startsAt: instant,
          clinicName: z.string(),
          zone: zoneName,
        }),
      ),
      labSteps: z.int(),
    }),
  ),
  proposals: z.array(
    z.object({
      id,
      /** Hash of every case's part together: sent back to accept exactly what was shown. */
      planHash: z.string(),
      label: z.string(),
      reach: repairReach,
      movedVisits: z.int(),
      /** No plan for these cases moves fewer visits while all other cases' visits stay, whatever laboratory work makes room. */
      leastMovedVisits: z.int(),
      /** Cases that make room although nothing of theirs falls away. */
      otherCases: z.int(),
      /** Affected cases in which nothing has to change. */
      untouchedCases: z.int(),
      ripples: z.array(ripple),
      /** Affected cases that no plan was found for: a person decides about each. */
      left: z.array(caseName),
    }),
  ),
  /** Set when no plan could be found, with the reason. */
  noProposalReason: z.string().nullable(),
});
export type DisturbanceView = z.output<typeof disturbanceView>;

export const disturbanceQuery = z.strictObject({
  state: disturbanceState.optional(),
  cursor: z.string().max(500).optional(),
  limit: z.coerce.number().int().min(1).max(100).default(20),
});
export type DisturbanceQuery = z.output<typeof disturbanceQuery>;

export const disturbancePage = z.object({ items: z.array(disturbanceView), next: z.string().nullable() });
export type DisturbancePage = z.output<typeof disturbancePage>;

/** The time is closed and everything moves as shown, in one go. */
export const acceptRepair = z.strictObject({ proposalId: id, planHash: z.string().min(1) });
export type AcceptRepair = z.output<typeof acceptRepair>;

/**
 * `keep`: the time is closed and what is booked in it stays until somebody moves it. `withdraw`: it was a mistake; refused
 * while a closure that it comes of is in force.
 */
export const decideDisturbance = z.strictObject({ decision: z.enum(['keep', 'withdraw']) });
export type DecideDisturbance = z.output<typeof decideDisturbance>;
