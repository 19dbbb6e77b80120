import type { Role } from '@archwright/contracts';

/** On whose behalf something happens. The background service acts for the organisation, without a person. */
export interface Actor {
  readonly organisationId: string;
  /** Null for the background service. */
  readonly userId: string | null;
  readonly role: Role | 'service';
  readonly clinicIds: readonly string[];
  readonly laboratoryIds: readonly string[];
  /** The clinician's own resource; null for everyone else. */
  readonly practitionerId: string | null;
}

export function serviceActor(organisationId: string): Actor {
  return { organisationId, userId: null, role: 'service', clinicIds: [], laboratoryIds: [], practitionerId: null };
}
