import { localDate } from '@archwright/calendar';
import type { SetupView } from '@archwright/contracts';
import { parsePath } from '@archwright/protocol';
import { TreatmentPathVersion } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { entriesFor } from './entries.js';
import { benchPlacesOf } from './work-centres.js';

/** What the practice consists of, and the words by which its published paths ask for it. */
export async function viewSetup(tx: EntityManager, actor: Actor, now: Date): Promise<SetupView> {
  const entries = await entriesFor(tx, actor);
  const zoned = entries.find(({ record }) => record.kind === 'clinic' || record.kind === 'laboratory')?.record;
  const zone = zoned !== undefined && 'zone' in zoned ? zoned.zone : 'UTC';
  return {
    today: localDate(now.getTime(), zone),
    entries,
    benchPlaces: await benchPlacesOf(tx),
    asked: await askedByPaths(tx),
  };
}

async function askedByPaths(tx: EntityManager): Promise<SetupView['asked']> {
  const paths = (await tx.find(TreatmentPathVersion)).map(({ document }) => parsePath(document));
  const visits = paths.flatMap((path) => path.visits);
  const steps = paths.flatMap((path) => path.labPhases.flatMap((phase) => phase.steps));
  return {
    skills: sorted(visits.flatMap(({ skills }) => skills)),
    kits: sorted(visits.flatMap(({ kits }) => kits)),
    workCentres: sorted(steps.map(({ workCentre }) => workCentre)),
  };
}

const sorted = (codes: readonly string[]): string[] => [...new Set(codes)].sort();
