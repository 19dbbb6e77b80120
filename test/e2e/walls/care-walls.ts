import { PAST, SEEN, LISTED, CHAIR, TREATING, PRACTICE, EVERY_WORKPLACE, reason, type Wall } from './wall.js';

/** Walls of what is watched and followed up: arrivals, findings, ranges, aftercare, transfers, cautions. */
export const careWalls: Readonly<Record<string, Wall>> = {
  'GET /arrival-checks': { roles: EVERY_WORKPLACE, answers: LISTED },
  'GET /arrival-checks/{id}': {
    roles: EVERY_WORKPLACE,
    answers: SEEN,
    path: ({ arrivalCheck }) => `/arrival-checks/${arrivalCheck}`,
  },
  'POST /arrival-checks/{id}/decision': {
    roles: TREATING,
    answers: PAST,
    path: ({ arrivalCheck }) => `/arrival-checks/${arrivalCheck}/decision`,
    body: () => ({ decision: 'wait', note: 'A test of walls.' }),
  },
  'GET /screening-findings': { roles: ['clinician', 'manager'], answers: LISTED },
  'PUT /screening-findings/{id}/seen': {
    roles: ['clinician', 'manager'],
    answers: PAST,
    path: ({ finding }) => `/screening-findings/${finding}/seen`,
  },
  'GET /tooth-list': { roles: ['clinician', 'manager'], answers: LISTED },
  'PUT /tooth-list': {
    roles: ['manager'],
    answers: { own: 412, otherClinic: 412, otherOrganisation: 412 },
    body: () => ({ shades: [], moulds: [], arrangements: [] }),
  },
  'GET /message-texts': { roles: ['manager'], answers: LISTED },
  'PUT /message-texts': {
    roles: ['manager'],
    answers: { own: 412, otherClinic: 412, otherOrganisation: 412 },
    body: () => ({ texts: [] }),
  },
  'GET /check-figures': { roles: ['clinician', 'manager'], answers: LISTED },
  'GET /measurement-ranges': { roles: ['clinician', 'manager'], answers: LISTED },
  'PUT /measurement-ranges': {
    roles: ['manager'],
    answers: { own: 412, otherClinic: 412, otherOrganisation: 412 },
    body: () => ({ usual: {}, limits: {}, reason: 'A test of walls.' }),
  },
  'GET /lab-orders': { roles: EVERY_WORKPLACE, answers: LISTED },

  'GET /cases/{id}/aftercare': {
    roles: PRACTICE,
    answers: SEEN,
    path: (records) => `/cases/${records.case}/aftercare`,
  },
  'POST /cases/{id}/sore-spots': {
    roles: CHAIR,
    answers: { own: 201, otherClinic: 404, otherOrganisation: 404 },
    path: (records) => `/cases/${records.case}/sore-spots`,
    body: () => ({
      arch: 'upper',
      region: 'tuberosity-right',
      foundOn: '2026-01-05',
      pain: 2,
      suspectedCause: 'long-border',
    }),
  },
  'POST /cases/{id}/adjustments': {
    roles: CHAIR,
    answers: { own: 201, otherClinic: 404, otherOrganisation: 404 },
    path: (records) => `/cases/${records.case}/adjustments`,
    body: () => ({ arch: 'upper', surface: 'border', what: 'Relieved.', amount: 'A light stroke' }),
  },
  'PUT /sore-spots/{id}/healing': {
    roles: CHAIR,
    answers: PAST,
    path: ({ soreSpot }) => `/sore-spots/${soreSpot}/healing`,
    body: () => ({ healedOn: '2026-01-06' }),
  },
  'PUT /referral-tasks/{id}/decision': {
    roles: CHAIR,
    answers: PAST,
    path: ({ referral }) => `/referral-tasks/${referral}/decision`,
    body: () => ({ decision: 'referred' }),
  },
  'GET /recalls': { roles: PRACTICE, answers: LISTED },
  'PUT /recalls/{id}/decision': {
    roles: TREATING,
    answers: PAST,
    path: ({ recall }) => `/recalls/${recall}/decision`,
    body: () => ({ decision: 'done', reason: 'A test of walls.' }),
  },
  'GET /transfers': { roles: PRACTICE, answers: LISTED },
  'GET /transfers/{id}': { roles: PRACTICE, answers: SEEN, path: ({ transfer }) => `/transfers/${transfer}` },
  'POST /transfers/{id}/decision': {
    roles: TREATING,
    answers: PAST,
    path: ({ transfer }) => `/transfers/${transfer}/decision`,
    body: () => ({ ...reason(), decision: 'withdraw' }),
  },
  'PUT /cases/{id}/visit-place': {
    roles: TREATING,
    answers: PAST,
    path: (records) => `/cases/${records.case}/visit-place`,
    body: () => ({ place: 'clinic' }),
  },
  'GET /patients/{id}/cautions': {
    roles: CHAIR,
    answers: SEEN,
    path: ({ patient }) => `/patients/${patient}/cautions`,
  },
  'POST /patients/{id}/cautions': {
    roles: CHAIR,
    answers: { own: 201, otherClinic: 404, otherOrganisation: 404 },
    path: ({ patient }) => `/patients/${patient}/cautions`,
    body: () => ({ kind: 'other', note: 'A test of walls.' }),
  },
  'PUT /cautions/{id}/end': {
    roles: CHAIR,
    answers: PAST,
    path: ({ caution }) => `/cautions/${caution}/end`,
    body: reason,
  },
};
