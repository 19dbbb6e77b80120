import { PAST, SEEN, LISTED, DESK, CHAIR, TREATING, PRACTICE, EVERY_WORKPLACE, reason, type Wall } from './wall.js';

/** Walls of the desk: patients, cases, offers, visits and calls. */
export const deskWalls: Readonly<Record<string, Wall>> = {
  'GET /practice': { roles: 'everyone', answers: LISTED },
  'GET /changes': { roles: 'everyone', answers: LISTED },

  'GET /patients': { roles: PRACTICE, answers: LISTED, path: () => '/patients?q=Walled' },
  'GET /patients/{id}': { roles: PRACTICE, answers: SEEN, path: ({ patient }) => `/patients/${patient}` },
  'POST /patients': {
    roles: ['front-desk', 'manager'],
    answers: { own: 201, otherClinic: 201, otherOrganisation: 201 },
    body: () => ({ givenName: 'New', familyName: 'Person', birthOn: '1950-02-03', zone: 'Europe/London' }),
  },
  'PUT /patients/{id}': {
    roles: ['front-desk', 'manager'],
    answers: PAST,
    path: ({ patient }) => `/patients/${patient}`,
    body: () => ({ givenName: 'New', familyName: 'Name', birthOn: '1950-02-03', zone: 'Europe/London' }),
  },

  'GET /cases': { roles: EVERY_WORKPLACE, answers: LISTED, path: () => '/cases?limit=100' },
  'GET /cases/{id}': { roles: EVERY_WORKPLACE, answers: SEEN, path: (records) => `/cases/${records.case}` },
  'POST /cases': {
    roles: TREATING,
    answers: { own: 201, otherClinic: 404, otherOrganisation: 404 },
    body: ({ patient, pathVersion, clinic }) => ({
      patientId: patient,
      arches: [{ arch: 'upper', pathVersionId: pathVersion }],
      clinicIds: [clinic],
    }),
  },
  'PUT /cases/{id}/consent': {
    roles: CHAIR,
    answers: PAST,
    path: (records) => `/cases/${records.case}/consent`,
    body: () => ({ consentOn: null, treatmentApprovedOn: null, medicinesAskedOn: null }),
  },
  'GET /cases/{id}/state-effects': {
    roles: TREATING,
    answers: SEEN,
    path: (records) => `/cases/${records.case}/state-effects?to=paused`,
  },
  'PUT /cases/{id}/state': {
    roles: TREATING,
    answers: PAST,
    path: (records) => `/cases/${records.case}/state`,
    body: () => ({ ...reason(), to: 'paused', reviewOn: '2027-03-01' }),
  },
  'GET /cases/{id}/reminders': {
    roles: DESK,
    answers: SEEN,
    path: (records) => `/cases/${records.case}/reminders`,
  },

  'GET /cases/{id}/itinerary': {
    roles: TREATING,
    answers: SEEN,
    path: (records) => `/cases/${records.case}/itinerary`,
  },
  'GET /cases/{id}/itinerary/calendar': {
    roles: TREATING,
    answers: SEEN,
    path: (records) => `/cases/${records.case}/itinerary/calendar`,
  },
  'POST /cases/{id}/itinerary': {
    roles: DESK,
    answers: SEEN,
    path: (records) => `/cases/${records.case}/itinerary`,
  },

  'POST /cases/{id}/offers': {
    roles: PRACTICE,
    answers: SEEN,
    path: ({ heldCase }) => `/cases/${heldCase}/offers`,
    body: () => ({ count: 1 }),
  },
  // The offer was booked, and nothing is left to offer instead.
  'POST /cases/{id}/holds': {
    roles: DESK,
    answers: { own: 422, otherClinic: 404, otherOrganisation: 404 },
    path: (records) => `/cases/${records.case}/holds`,
    body: ({ offer }) => ({ offerId: offer, kind: 'phone' }),
  },
  'POST /holds/{id}/confirm': {
    roles: DESK,
    answers: { own: 409, otherClinic: 404, otherOrganisation: 404 },
    path: ({ hold }) => `/holds/${hold}/confirm`,
    body: () => ({ planHash: 'of another plan' }),
  },
  'DELETE /holds/{id}': {
    roles: DESK,
    afterwards: 409,
    answers: { own: 204, otherClinic: 404, otherOrganisation: 404 },
    path: ({ hold }) => `/holds/${hold}`,
  },

  'GET /appointments': { roles: PRACTICE, answers: LISTED, path: ({ on }) => `/appointments?on=${on}` },
  'GET /appointments/{id}': {
    roles: PRACTICE,
    answers: SEEN,
    path: (records) => `/appointments/${records.appointment}`,
  },
  'GET /appointments/{id}/alternatives': {
    roles: DESK,
    answers: SEEN,
    path: (records) => `/appointments/${records.appointment}/alternatives`,
  },
  'POST /appointments/{id}/actions': {
    roles: TREATING,
    answers: PAST,
    path: (records) => `/appointments/${records.appointment}/actions`,
    body: () => ({ action: 'arrive' }),
  },

  'POST /ripples/move': {
    roles: DESK,
    answers: SEEN,
    body: ({ appointment, on }) => ({ appointmentId: appointment, startsAt: `${on}T10:00:00Z` }),
  },
  'POST /ripples/cancel': {
    roles: DESK,
    answers: SEEN,
    body: ({ appointment }) => ({ ...reason(), appointmentId: appointment, then: 'drop-rest' }),
  },
  'POST /ripples/{id}/apply': {
    roles: DESK,
    answers: { own: 409, otherClinic: 404, otherOrganisation: 404 },
    path: (records) => `/ripples/${records.ripple}/apply`,
    body: () => ({ planHash: 'of another plan' }),
  },

  'GET /call-tasks': { roles: DESK, answers: LISTED },
  'POST /call-tasks/{id}/attempts': {
    roles: DESK,
    answers: PAST,
    path: ({ callTask }) => `/call-tasks/${callTask}/attempts`,
    body: () => ({ outcome: 'no-answer' }),
  },
};
