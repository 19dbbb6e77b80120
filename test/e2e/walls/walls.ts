import { randomUUID } from 'node:crypto';
import type { Role } from '@archwright/contracts';
import type { Place, Records } from './walled-practice.js';

/** One row of the matrix: how a route is asked, and what each caller is answered. */
export interface Wall {
  /** Whom the route is for; an administrator may do whatever names roles. */
  readonly roles: readonly Role[] | 'everyone';
  /** Done by people in these roles alone, however much else an administrator may do. */
  readonly notByAdministrator?: true;
  /** The answer by where the caller stands, and by role where roles differ. A harmless refusal, such as 412 for a version long gone, shows that a caller got past the wall. */
  readonly answers: Readonly<Record<Place, number | Readonly<Partial<Record<Role, number>>>>>;
  /** What can be done once answers this to whoever comes later. */
  readonly afterwards?: number;
  readonly path?: (records: Records) => string;
  readonly body?: (records: Records) => object;
}

const PAST: Wall['answers'] = { own: 412, otherClinic: 404, otherOrganisation: 404 };
const SEEN: Wall['answers'] = { own: 200, otherClinic: 404, otherOrganisation: 404 };
/** A manager answers for every laboratory of the organisation; what it shows names no patient. */
const BENCHES: Wall['answers'] = { ...SEEN, otherClinic: { lab: 404, manager: 200 } };
const byClinic = (status: number) => ({ 'front-desk': status, clinician: status, administrator: status });
/** What a clinic holds is handled by its people alone. */
const IN_THE_CLINIC: Wall['answers'] = { ...PAST, own: { ...byClinic(412), lab: 403 } };
/** A list is answered to everyone, with what the caller may see in it. */
const LISTED: Wall['answers'] = { own: 200, otherClinic: 200, otherOrganisation: 200 };

const DESK: readonly Role[] = ['front-desk'];
const DESK_AND_MANAGER: readonly Role[] = ['front-desk', 'manager'];
const CHAIR: readonly Role[] = ['clinician'];
const TREATING: readonly Role[] = ['front-desk', 'clinician'];
const PRACTICE: readonly Role[] = ['front-desk', 'clinician', 'manager'];
const BENCH: readonly Role[] = ['lab', 'manager'];
const MANAGER: readonly Role[] = ['manager'];
const HANDLING: readonly Role[] = ['front-desk', 'clinician', 'lab'];
const EVERY_WORKPLACE: readonly Role[] = ['front-desk', 'clinician', 'manager', 'lab'];

const reason = () => ({ reason: 'A test of walls.' });

const anAccount = ({ clinic }: Records) => ({
  name: 'A front desk',
  role: 'front-desk',
  mail: null,
  clinicIds: [clinic],
  laboratoryIds: [],
  practitionerId: null,
});

/** By the route's name in the API's description. */
export const WALLS: Readonly<Record<string, Wall>> = {
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

  'GET /stage-board': { roles: PRACTICE, answers: LISTED, path: ({ on }) => `/stage-board?on=${on}` },
  'GET /stages/{id}': { roles: CHAIR, answers: SEEN, path: ({ stage }) => `/stages/${stage}` },
  'GET /stages/{id}/tracings/{number}/drawing': {
    roles: CHAIR,
    answers: SEEN,
    path: ({ stage }) => `/stages/${stage}/tracings/1/drawing`,
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
    body: () => ({ pitchMmPerTurn: 0.5, raisesBy: 'clockwise' }),
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
  'GET /lab/steps/{id}': { roles: BENCH, answers: BENCHES, path: ({ labStep }) => `/lab/steps/${labStep}` },
  'POST /lab/steps/{id}/actions': {
    roles: ['lab'],
    answers: PAST,
    path: ({ labStep }) => `/lab/steps/${labStep}/actions`,
    body: () => ({ action: 'start' }),
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

/** Routes that reach no record of an organisation through the caller's session, and what guards them instead. */
export const OUTSIDE: Readonly<Record<string, string>> = {
  'POST /sessions': 'opens the session; its own tests hold it',
  'GET /sessions/current': 'shows the session that asks',
  'PUT /sessions/current/password': 'changes the password of the person whose session asks',
  'DELETE /sessions/current': 'ends the session that asks',
  'GET /replies/{purpose}': 'a signed token names the visit; its own tests hold it',
  'POST /replies/{purpose}': 'a signed token names the visit; its own tests hold it',
  'POST /lab-orders': 'crosses to another organisation through the exchange; its own tests hold both sides',
  'GET /lab-orders/{id}': 'crosses to another organisation through the exchange; its own tests hold both sides',
  'POST /lab-orders/{id}/actions':
    'crosses to another organisation through the exchange; its own tests hold both sides',
  'GET /caught-mail': 'there only in the demonstration, which has one organisation',
  'GET /demo/clock': 'there only in the demonstration, which has one organisation',
  'PUT /demo/clock': 'there only in the demonstration, which has one organisation',
};
