import { randomUUID } from 'node:crypto';
import type { Records } from './walled-records.js';
import { PAST, SEEN, LISTED, MANAGER, type Wall } from './wall.js';

const anAccount = ({ clinic }: Records) => ({
  name: 'A front desk',
  role: 'front-desk',
  mail: null,
  clinicIds: [clinic],
  laboratoryIds: [],
  practitionerId: null,
});

/** Walls of what the practice consists of: set-up, people, figures, imports, paths and rules. */
export const setupWalls: Readonly<Record<string, Wall>> = {
  'POST /resources/{id}/calendar': {
    roles: ['front-desk', 'manager'],
    answers: SEEN,
    path: ({ chair }) => `/resources/${chair}/calendar`,
    body: () => ({ source: 'Feed', calendar: 'BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:test\r\nEND:VCALENDAR\r\n' }),
  },

  'GET /setup': { roles: MANAGER, answers: LISTED },
  'POST /setup/preview': { roles: MANAGER, answers: SEEN, body: ({ chair }) => ({ do: 'retire', id: chair }) },
  'POST /setup/records': {
    roles: MANAGER,
    answers: { own: 201, otherClinic: 404, otherOrganisation: 404 },
    body: ({ clinic }) => ({
      kind: 'kit',
      clinicId: clinic,
      code: 'tracing-set',
      label: 'Tracing set W',
      reprocessingMinutes: 60,
    }),
  },
  'PUT /setup/records/{id}': {
    roles: MANAGER,
    answers: PAST,
    path: ({ chair }) => `/setup/records/${chair}`,
    body: ({ clinic }) => ({ kind: 'chair', clinicId: clinic, label: 'Chair 1', wheelchairRoom: true }),
  },
  'PUT /setup/records/{id}/retirement': {
    roles: MANAGER,
    answers: PAST,
    path: ({ chair }) => `/setup/records/${chair}/retirement`,
    body: () => ({ isRetired: true }),
  },
  'DELETE /setup/closures/{id}': {
    roles: MANAGER,
    answers: { own: 204, otherClinic: 404, otherOrganisation: 404 },
    afterwards: 404,
    path: ({ closure }) => `/setup/closures/${closure}`,
  },

  'GET /users': { roles: MANAGER, answers: LISTED },
  'POST /users': {
    roles: MANAGER,
    answers: { own: 201, otherClinic: 404, otherOrganisation: 404 },
    body: (records) => ({ ...anAccount(records), signInName: randomUUID(), password: 'a-password-of-the-walls' }),
  },
  'PUT /users/{id}': {
    roles: MANAGER,
    answers: PAST,
    path: ({ user }) => `/users/${user}`,
    body: anAccount,
  },
  'PUT /users/{id}/activity': {
    roles: MANAGER,
    answers: PAST,
    path: ({ user }) => `/users/${user}/activity`,
    body: () => ({ isActive: false }),
  },
  'PUT /users/{id}/password': {
    roles: MANAGER,
    answers: PAST,
    path: ({ user }) => `/users/${user}/password`,
    body: () => ({ password: 'another-password-of-the-walls' }),
  },
  'GET /audit-entries': { roles: MANAGER, answers: LISTED, path: () => '/audit-entries?limit=200' },
  'GET /figures': { roles: MANAGER, answers: LISTED },
  'POST /patient-imports': {
    roles: MANAGER,
    answers: LISTED,
    body: () => ({ contentBase64: btoa('given name,family name,birth date'), zone: 'Europe/London', isTrial: true }),
  },

  'GET /treatment-paths': { roles: MANAGER, answers: LISTED },
  'GET /treatment-paths/{id}': {
    roles: MANAGER,
    answers: { own: 200, otherClinic: 200, otherOrganisation: 404 },
    path: ({ pathVersion }) => `/treatment-paths/${pathVersion}`,
  },
  'PUT /treatment-paths/{code}': {
    roles: MANAGER,
    answers: { own: 412, otherClinic: 412, otherOrganisation: 412 },
    path: () => '/treatment-paths/repair',
    body: () => ({ document: {} }),
  },
  'PUT /treatment-paths/{id}/withdrawal': {
    roles: MANAGER,
    answers: { own: 200, otherClinic: 200, otherOrganisation: 404 },
    path: ({ pathVersion }) => `/treatment-paths/${pathVersion}/withdrawal`,
    body: () => ({ isWithdrawn: false }),
  },

  'GET /practice-rules': { roles: MANAGER, answers: LISTED },
  'PUT /practice-rules': {
    roles: MANAGER,
    answers: { own: 412, otherClinic: 412, otherOrganisation: 412 },
    body: () => ({
      mailLeadMinutes: [],
      phoneLeadMinutes: [],
      quietHours: { from: '20:00', to: '08:00' },
      phoneHoldMinutes: 15,
      provisionalHoldMinutes: 2880,
      recallMonths: null,
      valuesPerFalseAlarm: 1000,
      ownLines: { en: '', de: '', ar: '' },
    }),
  },
};
