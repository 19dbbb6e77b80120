import { caseView, holdView, offersView, patientView, practiceView, type CaseView } from '@archwright/contracts';
import type { StubbornClient } from './stubborn-client.js';

/** Three visits, the shortest of the whole treatments. */
const PATH = 'abbreviated';

/** Everything from a new patient to a booked chain, however often the service goes away meanwhile. */
export async function bookChain(client: StubbornClient, name: string): Promise<CaseView> {
  const practice = await client.get({ method: 'GET', path: '/practice' }, practiceView);
  const path = practice.paths.find(({ code }) => code === PATH);
  const patient = await client.get(
    {
      method: 'POST',
      path: '/patients',
      body: {
        givenName: 'Ida',
        familyName: name,
        birthOn: '1950-02-03',
        zone: 'Europe/London',
        mail: `${name.toLowerCase()}@example.test`,
        reminderConsent: ['mail'],
      },
    },
    patientView,
  );
  const opened = await client.get(
    {
      method: 'POST',
      path: '/cases',
      body: {
        patientId: patient.id,
        arches: [{ arch: 'upper', pathVersionId: path?.versionId }],
        clinicIds: practice.clinics.map(({ id }) => id),
        clinicianId: null,
      },
    },
    caseView,
  );
  for (;;) {
    const booked = await tryToBook(client, opened.id);
    if (booked !== null) return booked;
  }
}

/** @returns null when somebody else was faster */
async function tryToBook(client: StubbornClient, caseId: string): Promise<CaseView | null> {
  const { offers } = await client.get(
    { method: 'POST', path: `/cases/${caseId}/offers`, body: { count: 1 } },
    offersView,
  );
  const [offer] = offers;
  if (offer === undefined) throw new Error('The practice has no time left to offer.');
  const held = await client.send({
    method: 'POST',
    path: `/cases/${caseId}/holds`,
    body: { offerId: offer.id, kind: 'phone' },
  });
  if (held.status === 409) return null;
  const { id, planHash } = holdView.parse(JSON.parse(held.text));
  const confirmed = await client.send({
    method: 'POST',
    path: `/holds/${id}/confirm`,
    body: { planHash, firm: 'all' },
  });
  return confirmed.status === 409 ? null : caseView.parse(JSON.parse(confirmed.text));
}
