import type { Role } from '@archwright/contracts';
import type { Place } from './walled-practice.js';
import type { Records } from './walled-records.js';

/** One row of the matrix: how a route is asked, and what each caller is answered. */
export interface Wall {
  /** Whom the route is for; an administrator may do whatever names roles. */
  readonly roles: readonly Role[] | 'everyone';
  /** Done by people in these roles alone, however much else an administrator may do. */
  readonly notByAdministrator?: true;
  /** The answer by where the caller stands, and by role where roles differ. A harmless refusal, such as 412 for a version long gone, shows that a caller got past the wall. */
  readonly answers: Readonly<Record<Place, number | Readonly<Partial<Record<Role, number>>>>>;
  /** What can be done once answers this to whoever comes later. */
  readonly afterwards?: number;
  readonly path?: (records: Records) => string;
  readonly body?: (records: Records) => object;
}

export const PAST: Wall['answers'] = { own: 412, otherClinic: 404, otherOrganisation: 404 };
export const SEEN: Wall['answers'] = { own: 200, otherClinic: 404, otherOrganisation: 404 };
/** A manager answers for every laboratory of the organisation; what it shows names no patient. */
export const BENCHES: Wall['answers'] = { ...SEEN, otherClinic: { lab: 404, manager: 200 } };
export const byClinic = (status: number) => ({ 'front-desk': status, clinician: status, administrator: status });
/** What a clinic holds is handled by its people alone. */
export const IN_THE_CLINIC: Wall['answers'] = { ...PAST, own: { ...byClinic(412), lab: 403 } };
/** A list is answered to everyone, with what the caller may see in it. */
export const LISTED: Wall['answers'] = { own: 200, otherClinic: 200, otherOrganisation: 200 };

export const DESK: readonly Role[] = ['front-desk'];
export const DESK_AND_MANAGER: readonly Role[] = ['front-desk', 'manager'];
export const CHAIR: readonly Role[] = ['clinician'];
export const TREATING: readonly Role[] = ['front-desk', 'clinician'];
export const PRACTICE: readonly Role[] = ['front-desk', 'clinician', 'manager'];
export const BENCH: readonly Role[] = ['lab', 'manager'];
export const MANAGER: readonly Role[] = ['manager'];
export const HANDLING: readonly Role[] = ['front-desk', 'clinician', 'lab'];
export const EVERY_WORKPLACE: readonly Role[] = ['front-desk', 'clinician', 'manager', 'lab'];

export const reason = () => ({ reason: 'A test of walls.' });
