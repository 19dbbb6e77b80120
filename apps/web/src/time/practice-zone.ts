import type { PracticeView } from '@archwright/contracts';
import { viewerZone } from './zone.js';

/** Zone for instants that belong to no clinic: the practice's own when its clinics agree on one, else the viewer's. */
export function practiceZone(practice: Pick<PracticeView, 'clinics'>): string {
  const [first, ...others] = new Set(practice.clinics.map((clinic) => clinic.zone));
  return first !== undefined && others.length === 0 ? first : viewerZone();
}
