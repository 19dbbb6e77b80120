import { caseView, holdView, offersView, patientView, type PracticeView } from '@archwright/contracts';
import type { ApiSession } from '../../apps/cli/src/demo/api-session.js';

/** Opens a case, asks for offers, and times what books one of them: the hold and its confirmation. */
export async function book(
  desk: ApiSession,
  { paths, clinics }: PracticeView,
  timings: number[],
): Promise<{ id: string; day: string }> {
  const pathVersionId = paths.find(({ code }) => code === 'conventional')?.versionId;
  const patient = await desk.call({
    method: 'POST',
    path: '/patients',
    answer: patientView,
    body: {
      givenName: 'Ida',
      familyName: 'Bench-Example',
      birthOn: '1950-02-03',
      zone: 'Europe/London',
      phone: '+44 20 7946 0012',
    },
  });
  const { id } = await desk.call({
    method: 'POST',
    path: '/cases',
    answer: caseView,
    body: {
      patientId: patient.id,
      arches: [
        { arch: 'upper', pathVersionId },
        { arch: 'lower', pathVersionId },
      ],
      clinicIds: clinics.map((clinic) => clinic.id),
      clinicianId: null,
    },
  });
  const asked = await desk.call({
    method: 'POST',
    path: `/cases/${id}/offers`,
    body: { count: 1 },
    answer: offersView,
  });
  const [offer] = asked.offers;
  if (offer === undefined) throw new Error(`No offer is left: ${asked.whyNot?.sentence ?? ''}`);
  const from = performance.now();
  const hold = await desk.call({
    method: 'POST',
    path: `/cases/${id}/holds`,
    body: { offerId: offer.id, kind: 'phone' },
    answer: holdView,
  });
  const held = performance.now();
  const body = { planHash: hold.planHash, firm: 'all' };
  await desk.call({ method: 'POST', path: `/holds/${hold.id}/confirm`, body, answer: caseView });
  timings.push(held - from, performance.now() - held);
  return { id, day: offer.plan.visits[0]?.startsAt.slice(0, 10) ?? '' };
}
