import type { SetupEntry, SetupKind, SetupRecord } from '@archwright/contracts';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { RecordNotFoundError } from '../errors.js';
import { clinicScope } from '../patients/patient-access.js';
import { keeperOf, setupKinds } from './keepers.js';
import { benchPlacesOf } from './work-centres.js';

/**
 * Everything that the practice consists of, as far as the actor answers for it: what belongs to a clinic of theirs, and
 * every laboratory. Of a person who works elsewhere too, only the hours at the actor's clinics are shown.
 */
export async function entriesFor(tx: EntityManager, actor: Actor): Promise<SetupEntry[]> {
  const all = await everyEntry(tx);
  const scope = clinicScope(actor);
  return scope === null ? all : withinClinics(all, scope, await benchPlacesOf(tx));
}

/** As {@link entriesFor}, whoever asks. */
export async function everyEntry(tx: EntityManager): Promise<SetupEntry[]> {
  const all: SetupEntry[] = [];
  for (const kind of setupKinds) all.push(...(await keeperOf(kind).list(tx)));
  return all;
}

/** @throws {RecordNotFoundError} for what is unknown here or belongs to a clinic that the actor does not answer for */
export async function requireEntry(tx: EntityManager, actor: Actor, id: string): Promise<SetupEntry> {
  const entry = (await entriesFor(tx, actor)).find((each) => each.id === id);
  if (entry === undefined) throw new RecordNotFoundError('part of the practice', id);
  return entry;
}

function withinClinics(
  all: readonly SetupEntry[],
  clinicIds: readonly string[],
  benchPlaces: readonly { readonly id: string }[],
): SetupEntry[] {
  const seen = all.flatMap((entry) => {
    const record = withinScope(entry.record, entry.id, clinicIds);
    return record === null ? [] : [{ ...entry, record }];
  });
  // A closure is seen by whoever sees what is closed; bench places are everybody's, as their laboratories are.
  const ids = new Set([...seen, ...benchPlaces].map(({ id }) => id));
  return seen.filter(({ record }) => record.kind !== 'closure' || ids.has(record.of.id));
}

function withinScope(record: SetupRecord, id: string, clinicIds: readonly string[]): SetupRecord | null {
  switch (record.kind) {
    case 'clinic':
      return clinicIds.includes(id) ? record : null;
    case 'chair':
    case 'kit':
    case 'device':
    case 'courier':
      return clinicIds.includes(record.clinicId) ? record : null;
    case 'person': {
      const workplaces = record.workplaces.filter(({ clinicId }) => clinicIds.includes(clinicId));
      return workplaces.length > 0 || record.workplaces.length === 0 ? { ...record, workplaces } : null;
    }
    default:
      return record;
  }
}

/**
 * @throws {RecordNotFoundError} when the record stands on something that the actor does not answer for, or that is not what
 * the record says it is
 */
export async function requireGround(tx: EntityManager, actor: Actor, record: SetupRecord): Promise<void> {
  const ground = groundOf(record);
  if (ground.length === 0) return;
  const kinds = new Map<string, GroundKind>(
    (await entriesFor(tx, actor)).map(({ id, record: { kind } }) => [id, kind]),
  );
  for (const { id } of await benchPlacesOf(tx)) kinds.set(id, 'bench-place');
  const missing = ground.find(({ id, kinds: accepted }) => {
    const kind = kinds.get(id);
    return kind === undefined || !accepted.includes(kind);
  });
  if (missing !== undefined) throw new RecordNotFoundError(missing.kinds.join(', '), missing.id);
}

type GroundKind = SetupKind | 'bench-place';

interface Ground {
  readonly id: string;
  readonly kinds: readonly GroundKind[];
}

const clinic = (id: string): Ground => ({ id, kinds: ['clinic'] });
const laboratory = (id: string): Ground => ({ id, kinds: ['laboratory'] });

/** What is closed by itself, by the word of a closure. */
const CLOSED: Readonly<Record<'clinic' | 'laboratory' | 'work-centre' | 'resource', readonly GroundKind[]>> = {
  clinic: ['clinic'],
  laboratory: ['laboratory'],
  'work-centre': ['work-centre'],
  resource: ['chair', 'kit', 'person', 'bench-place'],
};

function groundOf(record: SetupRecord): Ground[] {
  switch (record.kind) {
    case 'chair':
    case 'kit':
    case 'device':
      return [clinic(record.clinicId)];
    case 'person':
      return record.workplaces.map(({ clinicId }) => clinic(clinicId));
    case 'work-centre':
      return [laboratory(record.laboratoryId)];
    case 'courier':
      return [clinic(record.clinicId), laboratory(record.laboratoryId)];
    case 'closure':
      return [{ id: record.of.id, kinds: CLOSED[record.of.kind] }];
    default:
      return [];
  }
}
