import {
  PAST,
  SEEN,
  BENCHES,
  byClinic,
  IN_THE_CLINIC,
  LISTED,
  CHAIR,
  PRACTICE,
  BENCH,
  HANDLING,
  EVERY_WORKPLACE,
  reason,
  type Wall,
} from './wall.js';

/** Walls of the bench, and of things and parcels. */
export const laboratoryWalls: Readonly<Record<string, Wall>> = {
  'GET /lab/load': {
    roles: BENCH,
    answers: BENCHES,
    path: ({ laboratory, on }) => `/lab/load?laboratoryId=${laboratory}&from=${on}`,
  },
  'GET /lab/dispatch': {
    roles: BENCH,
    answers: BENCHES,
    path: ({ laboratory, on }) => `/lab/dispatch?laboratoryId=${laboratory}&on=${on}`,
  },
  'GET /lab/steps': { roles: BENCH, answers: SEEN, path: (records) => `/lab/steps?caseId=${records.case}` },
  'GET /lab/steps/{id}': { roles: BENCH, answers: BENCHES, path: ({ labStep }) => `/lab/steps/${labStep}` },
  'POST /lab/steps/{id}/actions': {
    roles: ['lab'],
    answers: PAST,
    path: ({ labStep }) => `/lab/steps/${labStep}/actions`,
    body: () => ({ action: 'start' }),
  },
  'POST /lab/steps/{id}/lateness': {
    roles: ['lab'],
    // Work can't be late that was to be ready later.
    answers: { own: 400, otherClinic: 404, otherOrganisation: 404 },
    path: ({ labStep }) => `/lab/steps/${labStep}/lateness`,
    body: () => ({ ...reason(), readyAt: '2026-01-05T08:00:00Z' }),
  },
  'GET /lab/workload': {
    roles: BENCH,
    answers: BENCHES,
    path: ({ laboratory }) => `/lab/workload?laboratoryId=${laboratory}`,
  },
  'POST /lab/workload/runs': {
    roles: ['lab'],
    afterwards: 409,
    answers: { own: 201, otherClinic: 404, otherOrganisation: 404 },
    body: ({ laboratory }) => ({ laboratoryId: laboratory }),
  },
  'POST /lab/workload/runs/{id}/cancel': {
    roles: ['lab'],
    answers: PAST,
    path: ({ workloadRun }) => `/lab/workload/runs/${workloadRun}/cancel`,
  },
  'POST /lab/workload/proposals/{id}/accept': {
    roles: ['lab'],
    answers: PAST,
    path: ({ workloadProposal }) => `/lab/workload/proposals/${workloadProposal}/accept`,
  },
  'GET /lab/remakes': {
    roles: BENCH,
    answers: LISTED,
    path: () => '/lab/remakes?fromOn=2027-01-01&untilOn=2027-03-31',
  },
  'GET /lab/questions': { roles: PRACTICE, answers: LISTED },
  'POST /lab/questions/{id}/answer': {
    roles: CHAIR,
    afterwards: 409,
    answers: { own: 204, otherClinic: 404, otherOrganisation: 404 },
    path: ({ question }) => `/lab/questions/${question}/answer`,
    body: () => ({ answer: 'The lighter one.' }),
  },

  'GET /objects': { roles: EVERY_WORKPLACE, answers: LISTED },
  'GET /objects/{id}': { roles: EVERY_WORKPLACE, answers: SEEN, path: ({ object }) => `/objects/${object}` },
  'POST /objects': {
    roles: HANDLING,
    answers: { ...SEEN, own: { ...byClinic(201), lab: 400 } },
    body: (records) => ({ caseId: records.case, kind: 'rim', arch: 'upper', clinicId: records.clinic }),
  },
  'POST /objects/{id}/actions': {
    roles: HANDLING,
    answers: IN_THE_CLINIC,
    path: ({ object }) => `/objects/${object}/actions`,
    body: () => ({ action: 'move', place: 'Shelf 2' }),
  },
  'POST /objects/{id}/disinfections': {
    roles: HANDLING,
    answers: { ...SEEN, own: { ...byClinic(201), lab: 403 } },
    path: ({ object }) => `/objects/${object}/disinfections`,
    body: () => ({ agent: 'any', method: 'spray', at: '2027-01-04T06:00:00Z' }),
  },
  'GET /parcels': { roles: EVERY_WORKPLACE, answers: LISTED },
  'GET /parcels/{id}': { roles: EVERY_WORKPLACE, answers: SEEN, path: ({ parcel }) => `/parcels/${parcel}` },
  'POST /parcels': {
    roles: HANDLING,
    // Which clinics and laboratories there are, everybody of the organisation knows.
    answers: { own: { ...byClinic(400), lab: 403 }, otherClinic: 403, otherOrganisation: 404 },
    body: ({ clinic, laboratory }) => ({
      direction: 'to-lab',
      clinicId: clinic,
      laboratoryId: laboratory,
      objects: [{ caseNumber: 'none', code: 'none' }],
    }),
  },
  'POST /parcels/{id}/actions': {
    roles: HANDLING,
    answers: PAST,
    path: ({ parcel }) => `/parcels/${parcel}/actions`,
    body: () => ({ action: 'hand-over', carrier: 'Van' }),
  },
  'POST /parcels/{id}/reconciliation': {
    roles: HANDLING,
    // No object bears that code.
    answers: { ...SEEN, own: 400 },
    path: ({ parcel }) => `/parcels/${parcel}/reconciliation`,
    body: () => ({ findings: [{ caseNumber: 'none', code: 'none', found: 'missing' }] }),
  },
  'GET /material-lots': { roles: EVERY_WORKPLACE, answers: LISTED, path: () => '/material-lots?lot=any' },
  'POST /lab/steps/{id}/material-lots': {
    roles: ['lab'],
    // The work has not begun.
    answers: { own: 409, otherClinic: 404, otherOrganisation: 404 },
    path: ({ labStep }) => `/lab/steps/${labStep}/material-lots`,
    body: () => ({ material: 'Base resin', lot: 'L1', expiresOn: null }),
  },
};
