import { caseView, holdView, offersView, patientView, practiceView, type CaseView } from '@archwright/contracts';
import type { Page } from 'playwright-core';
import { callService } from './service-call.js';

/** A patient of the test's own, entered behind the screen; answers the id. */
export async function enterPatient(page: Page, fields: Readonly<Record<string, unknown>>): Promise<string> {
  const body = { givenName: 'Test', familyName: 'Example', birthOn: '1950-01-01', zone: 'Europe/London', ...fields };
  return (await callService(page, 'POST /patients', { answer: patientView, body })).id;
}

/** A case on the conventional path for both arches, opened behind the screen. */
export async function openCase(page: Page, patientId: string): Promise<CaseView> {
  const practice = await callService(page, 'GET /practice', { answer: practiceView });
  const pathVersionId = practice.paths.find(({ code }) => code === 'conventional')?.versionId;
  const arches = ['upper', 'lower'].map((arch) => ({ arch, pathVersionId }));
  const body = { patientId, arches, clinicIds: practice.clinics.map(({ id }) => id) };
  return callService(page, 'POST /cases', { answer: caseView, body });
}

/** The same with every visit of its first offer booked. */
export async function bookCase(page: Page, patientId: string): Promise<CaseView> {
  const { id } = await openCase(page, patientId);
  const { offers } = await callService(page, `POST /cases/${id}/offers`, { answer: offersView, body: { count: 1 } });
  const [offer] = offers;
  if (offer === undefined) throw new Error('There is no offer.');
  const held = { offerId: offer.id, kind: 'phone' };
  const hold = await callService(page, `POST /cases/${id}/holds`, { answer: holdView, body: held });
  const confirmed = { planHash: hold.planHash, firm: 'all' };
  return callService(page, `POST /holds/${hold.id}/confirm`, { answer: caseView, body: confirmed });
}
