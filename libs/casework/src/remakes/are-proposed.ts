import type { Ripple } from '@archwright/contracts';
import { ReplanProposal } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { NO_CHANGE, loadPlan, planHashOf } from '../planning/stored-plan.js';
import type { Repair } from './repair.js';

/** What a proposal books, and from which state of its cases. */
interface Fingerprint {
  readonly planHash: string;
  readonly caseVersion: number;
}

/** Whether just these repairs, from the present state of every case in them, are what the alert's open proposals say. */
export async function areProposed(tx: EntityManager, alertId: string, repairs: readonly Repair[]): Promise<boolean> {
  const open = await tx.findBy(ReplanProposal, { alertId, state: 'open' });
  const known: string[] = [];
  for (const { ripples } of open) known.push(keyOf(await storedParts(tx, ripples as Ripple[])));
  const found = repairs.map(({ parts }) =>
    keyOf(
      parts.map(({ basis: { treatmentCase }, found: { plan } }) => ({
        planHash: planHashOf(treatmentCase.id, { plan, change: NO_CHANGE }),
        caseVersion: treatmentCase.version,
      })),
    ),
  );
  return known.length > 0 && known.sort().join() === found.sort().join();
}

async function storedParts(tx: EntityManager, ripples: readonly Ripple[]): Promise<Fingerprint[]> {
  const parts: Fingerprint[] = [];
  for (const { id } of ripples) parts.push(await loadPlan(tx, id, ['proposal']));
  return parts;
}

const keyOf = (parts: readonly Fingerprint[]): string =>
  parts.map(({ planHash, caseVersion }) => `${planHash} ${String(caseVersion)}`).join('+');
