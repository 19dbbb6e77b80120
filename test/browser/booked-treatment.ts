import { practiceView } from '@archwright/contracts';
import type { Cast } from '../../apps/cli/src/demo/cast.js';
import { Narrator } from '../../apps/cli/src/demo/narrator.js';
import { Treatment } from '../../apps/cli/src/demo/treatment.js';
import { bookedCase, found } from '../e2e/booking-practice.js';

/** The visit of the digital path at which the jaw relation is recorded. */
export const COMBINED_VISIT = 'D2';

/** A digital case with the clinician whose screen the suites sign in to, every visit booked. */
export async function bookedTreatment(cast: Cast): Promise<Treatment> {
  const practice = await cast.desk.call({ method: 'GET', path: '/practice', answer: practiceView });
  const clinicians = practice.clinics.flatMap((clinic) => clinic.clinicians);
  const { id: clinicianId } = found(clinicians.find(({ name }) => name === 'Dr Imogen Thorne-Example'));
  const booked = await bookedCase({ desk: cast.desk, practice }, { path: 'digital-printed-bases', clinicianId });
  return new Treatment(cast, booked.id, new Narrator(() => undefined));
}
