import {
  PAST,
  SEEN,
  LISTED,
  DESK,
  DESK_AND_MANAGER,
  CHAIR,
  TREATING,
  PRACTICE,
  EVERY_WORKPLACE,
  reason,
  type Wall,
} from './wall.js';

/** Walls of the chair, and of what falls away or has to be made again. */
export const treatmentWalls: Readonly<Record<string, Wall>> = {
  'GET /stage-board': { roles: PRACTICE, answers: LISTED, path: ({ on }) => `/stage-board?on=${on}` },
  'GET /stages/{id}': { roles: CHAIR, answers: SEEN, path: ({ stage }) => `/stages/${stage}` },
  'GET /stages/{id}/tracings/{number}/drawing': {
    roles: CHAIR,
    answers: SEEN,
    path: ({ stage }) => `/stages/${stage}/tracings/1/drawing`,
  },
  'GET /stages/{id}/prescription-preview': {
    roles: CHAIR,
    // The visit has not begun.
    answers: { own: 409, otherClinic: 404, otherOrganisation: 404 },
    path: ({ stage }) => `/stages/${stage}/prescription-preview`,
  },
  'GET /stages/{id}/photographs': {
    roles: CHAIR,
    answers: SEEN,
    path: ({ stage }) => `/stages/${stage}/photographs`,
  },
  'POST /stages/{id}/photographs': {
    roles: CHAIR,
    answers: { own: 400, otherClinic: 404, otherOrganisation: 404 },
    path: ({ stage }) => `/stages/${stage}/photographs`,
    body: () => ({ caption: 'A test of walls.', jpeg: 'AAAA' }),
  },
  'GET /stages/{id}/photographs/{photographId}/picture': {
    roles: CHAIR,
    answers: SEEN,
    path: ({ stage, photograph }) => `/stages/${stage}/photographs/${photograph}/picture`,
  },
  'POST /stages/{id}/photographs/{photographId}/removal': {
    roles: CHAIR,
    answers: { own: 409, otherClinic: 404, otherOrganisation: 404 },
    path: ({ stage, photographGone }) => `/stages/${stage}/photographs/${photographGone}/removal`,
    body: reason,
  },
  'GET /cases/{id}/course': {
    roles: CHAIR,
    answers: SEEN,
    path: (records) => `/cases/${records.case}/course`,
  },
  'GET /stages/{id}/verdict-history': {
    roles: CHAIR,
    answers: SEEN,
    path: ({ stage }) => `/stages/${stage}/verdict-history`,
  },
  'GET /stages/{id}/tooth-choice': {
    roles: CHAIR,
    answers: SEEN,
    path: ({ stage }) => `/stages/${stage}/tooth-choice`,
  },
  'PUT /stages/{id}/tooth-choice': {
    roles: CHAIR,
    answers: PAST,
    path: ({ stage }) => `/stages/${stage}/tooth-choice`,
    body: () => ({ wish: '', arrangement: '', shade: '', mould: '', decidedBy: null, measured: [] }),
  },
  'PUT /stages/{id}/bearing-screw': {
    roles: CHAIR,
    answers: PAST,
    path: ({ stage }) => `/stages/${stage}/bearing-screw`,
    body: () => ({ pitchMmPerTurn: 0.5, raisesBy: 'clockwise', instead: null }),
  },
  'POST /stages/{id}/captures': {
    roles: CHAIR,
    answers: PAST,
    path: ({ stage }) => `/stages/${stage}/captures`,
    body: () => ({}),
  },
  'POST /stages/{id}/overrides': {
    roles: CHAIR,
    notByAdministrator: true,
    answers: PAST,
    path: ({ stage }) => `/stages/${stage}/overrides`,
    body: () => ({ ...reason(), gate: 'consent' }),
  },
  'POST /stages/{id}/completion': {
    roles: CHAIR,
    answers: PAST,
    path: ({ stage }) => `/stages/${stage}/completion`,
    body: () => ({ outcome: 'passed' }),
  },
  'POST /stages/{id}/prescription': {
    roles: CHAIR,
    answers: PAST,
    path: ({ stage }) => `/stages/${stage}/prescription`,
    body: ({ on }) => ({ disinfection: { agent: 'any', at: `${on}T10:00:00Z` } }),
  },

  'GET /freed-time': {
    roles: DESK,
    answers: SEEN,
    path: ({ clinic, clinician, on }) =>
      `/freed-time?clinicId=${clinic}&clinicianId=${clinician}&startsAt=${on}T10:00:00Z&endsAt=${on}T11:00:00Z`,
  },

  'GET /disturbances': { roles: DESK_AND_MANAGER, answers: LISTED },
  'GET /disturbances/subjects': { roles: DESK_AND_MANAGER, answers: LISTED },
  'GET /disturbances/{id}': {
    roles: DESK_AND_MANAGER,
    answers: SEEN,
    path: ({ disturbance }) => `/disturbances/${disturbance}`,
  },
  'POST /disturbances': {
    roles: DESK_AND_MANAGER,
    answers: { own: 201, otherClinic: 404, otherOrganisation: 404 },
    body: ({ chair, on }) => ({
      ...reason(),
      what: 'resource',
      id: chair,
      startsAt: `${on}T06:00:00Z`,
      endsAt: `${on}T18:00:00Z`,
    }),
  },
  'POST /disturbances/{id}/acceptance': {
    roles: DESK,
    answers: PAST,
    path: ({ disturbance }) => `/disturbances/${disturbance}/acceptance`,
    body: ({ offer }) => ({ proposalId: offer, planHash: 'of another plan' }),
  },
  'POST /disturbances/{id}/decision': {
    roles: DESK_AND_MANAGER,
    answers: PAST,
    path: ({ disturbance }) => `/disturbances/${disturbance}/decision`,
    body: () => ({ decision: 'withdraw' }),
  },

  'GET /visit-proposals': { roles: DESK_AND_MANAGER, answers: LISTED },
  'POST /visit-proposals/{id}/acceptance': {
    roles: DESK,
    answers: PAST,
    path: ({ visitProposal }) => `/visit-proposals/${visitProposal}/acceptance`,
  },
  'GET /remake-alerts': { roles: EVERY_WORKPLACE, answers: LISTED },
  'GET /remake-alerts/{id}': { roles: EVERY_WORKPLACE, answers: SEEN, path: ({ alert }) => `/remake-alerts/${alert}` },
  'POST /remake-alerts': {
    roles: ['clinician', 'lab'],
    answers: { own: 409, otherClinic: 404, otherOrganisation: 404 },
    body: (records) => ({ ...reason(), caseId: records.case, stage: records.stageCode, trigger: 'no-such-trigger' }),
  },
  'POST /remake-alerts/{id}/acceptance': {
    roles: TREATING,
    answers: PAST,
    path: ({ alert }) => `/remake-alerts/${alert}/acceptance`,
    body: ({ alert }) => ({ proposalId: alert, planHash: 'of another plan' }),
  },
  'POST /remake-alerts/{id}/dismissal': {
    roles: CHAIR,
    answers: PAST,
    path: ({ alert }) => `/remake-alerts/${alert}/dismissal`,
    body: reason,
  },
};
