import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { ahead, aheadOf } from '../ahead.js';
import { queryClient } from '../api/queries.js';
import { callsQuery } from '../call-list/use-calls.js';
import { caseQuery } from '../case-page/use-case.js';
import { dayQuery } from '../desk-day/use-desk-day.js';
import { daySearch, freedSearch, newCaseSearch, newPatientSearch, offersSearch } from '../search-params.js';
import { inside } from './inside.js';

const desk = createRoute({
  getParentRoute: () => inside,
  path: '/desk',
  validateSearch: daySearch,
  loaderDeps: ({ search: { on, clinic } }) => ({ on, clinic }),
  loader: ({ deps: { on, clinic } }) => {
    aheadOf(({ today }) =>
      Promise.all([queryClient.query(dayQuery(on ?? today, clinic)), queryClient.query(callsQuery)]),
    );
  },
  component: lazyRouteComponent(() => import('../desk-day/desk-day-page.js'), 'DeskDayPage'),
});

const calls = createRoute({
  getParentRoute: () => inside,
  path: '/desk/calls',
  component: lazyRouteComponent(() => import('../call-list/call-list-page.js'), 'CallListPage'),
});

const beforeVisits = createRoute({
  getParentRoute: () => inside,
  path: '/desk/before-visits',
  component: lazyRouteComponent(() => import('../before-visits/before-visits-page.js'), 'BeforeVisitsPage'),
});

const disturbances = createRoute({
  getParentRoute: () => inside,
  path: '/desk/falls-away',
  component: lazyRouteComponent(() => import('../disturbances/disturbances-page.js'), 'DisturbancesPage'),
});

const disturbance = createRoute({
  getParentRoute: () => inside,
  path: '/desk/falls-away/$disturbanceId',
  component: lazyRouteComponent(() => import('../disturbances/disturbance-page.js'), 'DisturbancePage'),
});

const proposedMoves = createRoute({
  getParentRoute: () => inside,
  path: '/desk/proposed-moves',
  component: lazyRouteComponent(() => import('../workload/visit-proposals-page.js'), 'VisitProposalsPage'),
});

const lostVisit = createRoute({
  getParentRoute: () => inside,
  path: '/desk/falls-away/visits/$appointmentId',
  component: lazyRouteComponent(() => import('../disturbances/lost-visit-page.js'), 'LostVisitPage'),
});

const deskOrders = createRoute({
  getParentRoute: () => inside,
  path: '/desk/lab-orders',
  component: lazyRouteComponent(() => import('../lab-orders/lab-orders-page.js'), 'LabOrdersPage'),
});

const deskParcels = createRoute({
  getParentRoute: () => inside,
  path: '/desk/parcels',
  component: lazyRouteComponent(() => import('../parcels/parcels-page.js'), 'ParcelsPage'),
});

const newPatient = createRoute({
  getParentRoute: () => inside,
  path: '/desk/patients/new',
  validateSearch: newPatientSearch,
  remountDeps: ({ search }) => search,
  component: lazyRouteComponent(() => import('../patient-form/new-patient-page.js'), 'NewPatientPage'),
});

const patient = createRoute({
  getParentRoute: () => inside,
  path: '/desk/patients/$patientId',
  component: lazyRouteComponent(() => import('../patient-form/patient-page.js'), 'PatientPage'),
});

const newCase = createRoute({
  getParentRoute: () => inside,
  path: '/desk/cases/new',
  validateSearch: newCaseSearch,
  remountDeps: ({ search }) => search,
  component: lazyRouteComponent(() => import('../open-case/open-case-page.js'), 'OpenCasePage'),
});

const freedTime = createRoute({
  getParentRoute: () => inside,
  path: '/desk/freed-time',
  validateSearch: freedSearch,
  remountDeps: ({ search }) => search,
  component: lazyRouteComponent(() => import('../freed-time/freed-time-page.js'), 'FreedTimePage'),
});

const oneCase = createRoute({
  getParentRoute: () => inside,
  path: '/desk/cases/$caseId',
  validateSearch: freedSearch,
  loader: ({ params: { caseId } }) => {
    ahead(() => queryClient.query(caseQuery(caseId)));
  },
  component: lazyRouteComponent(() => import('../case-page/case-page.js'), 'CasePage'),
});

const offers = createRoute({
  getParentRoute: () => inside,
  path: '/desk/cases/$caseId/offers',
  validateSearch: offersSearch,
  component: lazyRouteComponent(() => import('../offers/offers-page.js'), 'OffersPage'),
});

const itinerary = createRoute({
  getParentRoute: () => inside,
  path: '/desk/cases/$caseId/itinerary',
  component: lazyRouteComponent(() => import('../itinerary/itinerary-page.js'), 'ItineraryPage'),
});

const changeVisit = createRoute({
  getParentRoute: () => inside,
  path: '/desk/cases/$caseId/visits/$appointmentId',
  component: lazyRouteComponent(() => import('../change-visit/change-visit-page.js'), 'ChangeVisitPage'),
});

/** Screens of the front desk. */
export const deskRoutes = [
  desk,
  calls,
  beforeVisits,
  disturbances,
  proposedMoves,
  disturbance,
  lostVisit,
  deskOrders,
  deskParcels,
  newPatient,
  patient,
  newCase,
  freedTime,
  oneCase,
  offers,
  itinerary,
  changeVisit,
] as const;
