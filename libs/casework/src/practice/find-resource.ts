import { DomainError } from '@archwright/kernel';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { clinicScope } from '../patients/patient-access.js';

/** A chair, person or kit of a clinic, as a person names it. */
export interface FoundResource {
  readonly id: string;
  readonly label: string;
  /** Name of its clinic; of the first one for a person who works at several. */
  readonly clinic: string;
  /** Zone of that clinic. */
  readonly zone: string;
}

/** A name that stands for no resource, or for several. */
export class ResourceNameError extends DomainError {
  constructor(name: string, matches: number, accepted: readonly string[]) {
    const found = matches === 0 ? `There is no chair, person or kit "${name}"` : `"${name}" names ${String(matches)}`;
    const reason = matches === 0 ? 'resource-not-found' : 'resource-ambiguous';
    super(`casework.${reason}`, `${found}. Accepted: ${accepted.join(', ')}.`, { name, accepted });
  }
}

interface Placed extends FoundResource {
  readonly code: string | null;
  readonly clinicId: string;
}

/**
 * Finds a chair, person or kit by label, code or id, upper and lower case alike.
 *
 * @param clinic name or id of the clinic, where the name alone stands for several
 * @throws {ResourceNameError} with what would be accepted
 */
export async function findResource(
  tx: EntityManager,
  actor: Actor,
  { name, clinic }: { readonly name: string; readonly clinic?: string | undefined },
): Promise<FoundResource> {
  const scope = clinicScope(actor);
  const inClinic = (await placedResources(tx)).filter(
    (each) =>
      (scope === null || scope.includes(each.clinicId)) &&
      (clinic === undefined || isNamed(clinic, each.clinic, each.clinicId)),
  );
  const matches = inClinic.filter(({ id, label, code }) => isNamed(name, id, label, code));
  // A person who works at two clinics is one resource; two kits of one code are two.
  const [found, second] = [...new Map(matches.map((each) => [each.id, each])).values()];
  if (found !== undefined && second === undefined) return matches[0] ?? found;
  const choice = matches.length === 0 ? inClinic : matches;
  const accepted = choice.map(({ label, clinic: at }) => `"${label}" of the clinic "${at}"`);
  throw new ResourceNameError(name, matches.length, accepted);
}

async function placedResources(tx: EntityManager): Promise<Placed[]> {
  return tx.query(
    `SELECT r.id, r.label, at.code, c.id AS "clinicId", c.name AS clinic, c.zone FROM resource r
     JOIN (SELECT id, clinic_id, NULL AS code FROM chair UNION ALL
           SELECT id, clinic_id, code FROM kit UNION ALL
           SELECT practitioner_id, clinic_id, NULL FROM practitioner_clinic) AS at ON at.id = r.id
     JOIN clinic c ON c.id = at.clinic_id
     WHERE r.retired_at IS NULL ORDER BY c.id, r.label, r.id`,
  );
}

function isNamed(wanted: string, ...names: (string | null)[]): boolean {
  const plain = (text: string) => text.trim().toLowerCase();
  return names.some((name) => name !== null && plain(name) === plain(wanted));
}
