import { z } from 'zod';
import { deliveredText } from './delivered.js';
import { ripple } from './appointment.js';
import { id, instant, localDate, version, zoneName } from './primitives.js';

export const workloadQuery = z.strictObject({ laboratoryId: id });
export type WorkloadQuery = z.output<typeof workloadQuery>;

/** Look for better plans of a laboratory's work. */
export const askWorkload = z.strictObject({
  laboratoryId: id,
  /** How far ahead work may move. */
  weeks: z.int().min(1).max(8).default(3),
  /** How long the search may take in all. */
  seconds: z.int().min(1).max(120).default(12),
  /** Another number searches another way; the same one finds the same, epoch by epoch. */
  seed: z.int().min(0).max(1_000_000).default(1),
});
export type AskWorkload = z.output<typeof askWorkload>;

/** All but `free-visits` leave every visit where it is. */
const proposalKind = z.enum(['within-slack', 'level-load', 'overtime', 'other-laboratory', 'free-visits']);
export type WorkloadProposalKind = z.output<typeof proposalKind>;

/** How a plan stands, in figures that people compare. */
const standing = z.object({
  lateCases: z.int(),
  lateMinutes: z.int(),
  /** Days on which a work centre is taken for more than 85 % of its open time. */
  fullDays: z.int(),
});
export type WorkloadStanding = z.output<typeof standing>;

const lateWork = z.object({
  caseId: id,
  caseNumber: z.string(),
  lateMinutes: z.int(),
  sentence: z.string(),
  cause: z.string(),
});
export type LateWork = z.output<typeof lateWork>;

const move = z.object({
  caseId: id,
  caseNumber: z.string(),
  title: deliveredText,
  workCentre: z.string(),
  /** The laboratory it goes to; null while it stays in its own. */
  laboratory: z.string().nullable(),
  fromAt: instant,
  toAt: instant,
});

/** A visit that would move, without its patient: a laboratory knows cases by their numbers. */
const movedVisit = z.object({
  caseId: id,
  caseNumber: z.string(),
  title: deliveredText,
  clinicName: z.string(),
  zone: zoneName,
  fromAt: instant,
  toAt: instant,
});

const changedDay = z.object({
  workCentreId: id,
  workCentre: z.string(),
  on: localDate,
  beforeMinutes: z.int(),
  afterMinutes: z.int(),
  openMinutes: z.int(),
});

/** What a proposal would do: nothing of it is done until somebody accepts. */
export const shownProposal = z.object({
  title: z.string(),
  sentence: z.string(),
  /** How good it is known to be: proved best, within some percent, or the bound is weak here. */
  certainty: z.string(),
  before: standing,
  after: standing,
  moves: z.array(move),
  visits: z.array(movedVisit),
  /** Days whose load it changes. */
  days: z.array(changedDay),
  overtime: z.array(z.object({ workCentre: z.string(), on: localDate, minutes: z.int() })),
});
export type ShownProposal = z.output<typeof shownProposal>;

const proposalState = z.enum(['open', 'accepted', 'superseded']);

const workloadProposal = shownProposal.extend({ id, version, kind: proposalKind, state: proposalState });

export const workloadRun = z.object({
  id,
  version,
  laboratoryId: id,
  state: z.enum(['asked', 'running', 'finished', 'cancelled', 'failed']),
  sentence: z.string(),
  askedAt: instant,
  seed: z.int(),
  weeks: z.int(),
  /** Rounds of the search so far. */
  epochs: z.int(),
  /** Work that will be late as it is planned now, the latest first; empty until the plan was looked at. */
  late: z.array(lateWork),
  proposals: z.array(workloadProposal),
});
export type WorkloadRunView = z.output<typeof workloadRun>;

/** The latest search of a laboratory; null when there was none. */
export const workloadView = z.object({ run: workloadRun.nullable() });
export type WorkloadView = z.output<typeof workloadView>;

/**
 * Free visits of several cases, chosen again so that laboratory work is not late: as whoever calls the patients sees it.
 * Accepting moves all of it or nothing.
 */
export const visitProposal = z.object({
  id,
  version,
  state: proposalState,
  laboratory: z.string(),
  askedAt: instant,
  sentence: z.string(),
  certainty: z.string(),
  before: standing,
  after: standing,
  /** Complete new plans of the cases that change, with their calls. */
  ripples: z.array(ripple.extend({ caseNumber: z.string() })),
});
export type VisitProposal = z.output<typeof visitProposal>;

/** Open ones whose cases are all of the reader's clinics. */
export const visitProposals = z.object({ items: z.array(visitProposal) });
export type VisitProposals = z.output<typeof visitProposals>;
