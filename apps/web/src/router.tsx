import {
  createRootRoute,
  createRoute,
  createRouter,
  lazyRouteComponent,
  Outlet,
  redirect,
} from '@tanstack/react-router';
import { ahead } from './ahead.js';
import { hasStatus } from './api/errors.js';
import { practiceQuery, queryClient, sessionQuery } from './api/queries.js';
import { sessionGood } from './api/session-watch.js';
import { dispatchQuery, loadQuery, shownBench } from './bench/use-bench.js';
import { callsQuery } from './call-list/use-calls.js';
import { caseQuery } from './case-page/use-case.js';
import { dayQuery } from './desk-day/use-desk-day.js';
import { Frame } from './frame/frame.js';
import { doorFor, homeOf } from './frame/places-view.js';
import { Crash, NotFound } from './frame/not-found.js';
import {
  auditSearch,
  benchSearch,
  boardSearch,
  daySearch,
  findSearch,
  freedSearch,
  lotSearch,
  newCaseSearch,
  newPatientSearch,
  offersSearch,
  pathSearch,
  remakeSearch,
  setupSearch,
  signInSearch,
  ticketSearch,
} from './search-params.js';
import { SignInPage } from './sign-in/sign-in-page.js';
import { boardQuery, chosenClinician } from './stage-board/use-stage-board.js';
import { stageQuery } from './stage/use-stage.js';

const root = createRootRoute({ component: Outlet, notFoundComponent: NotFound, errorComponent: Crash });

const signIn = createRoute({
  getParentRoute: () => root,
  path: '/sign-in',
  validateSearch: signInSearch,
  component: SignInPage,
});

const askSession = () => queryClient.query({ ...sessionQuery, staleTime: 'static' });

/** Everything behind the sign-in. Whoever comes without a session signs in first and lands where they wanted to go. */
/** The parts of the look on one page, while it is being worked on. */
const whileWorking = import.meta.env.DEV
  ? [
      createRoute({
        getParentRoute: () => root,
        path: '/style',
        component: lazyRouteComponent(() => import('./style/style-page.js'), 'StylePage'),
      }),
    ]
  : [];

const inside = createRoute({
  getParentRoute: () => root,
  id: 'inside',
  component: Frame,
  beforeLoad: async ({ location }) => {
    try {
      const session = await askSession();
      sessionGood();
      const door = doorFor(session.role, location.pathname);
      // eslint-disable-next-line @typescript-eslint/only-throw-error -- the router's way to say "go elsewhere"
      if (door !== null) throw redirect({ href: door, replace: true });
      return { session };
    } catch (error) {
      if (!hasStatus(error, 401)) throw error;
      // eslint-disable-next-line @typescript-eslint/only-throw-error -- the router's way to say "go elsewhere"
      throw redirect({ to: '/sign-in', search: { next: location.href } });
    }
  },
});

const home = createRoute({
  getParentRoute: () => inside,
  path: '/',
  beforeLoad: ({ context }) => {
    // eslint-disable-next-line @typescript-eslint/only-throw-error -- the router's way to say "go elsewhere"
    throw redirect({ to: homeOf(context.session.role), replace: true });
  },
});

const find = createRoute({
  getParentRoute: () => inside,
  path: '/find',
  validateSearch: findSearch,
  component: lazyRouteComponent(() => import('./find/find-page.js'), 'FindPage'),
});

const desk = createRoute({
  getParentRoute: () => inside,
  path: '/desk',
  validateSearch: daySearch,
  loaderDeps: ({ search: { on, clinic } }) => ({ on, clinic }),
  loader: ({ deps: { on, clinic } }) => {
    ahead(({ today }) =>
      Promise.all([queryClient.query(dayQuery(on ?? today, clinic)), queryClient.query(callsQuery)]),
    );
  },
  component: lazyRouteComponent(() => import('./desk-day/desk-day-page.js'), 'DeskDayPage'),
});

const calls = createRoute({
  getParentRoute: () => inside,
  path: '/desk/calls',
  component: lazyRouteComponent(() => import('./call-list/call-list-page.js'), 'CallListPage'),
});

const beforeVisits = createRoute({
  getParentRoute: () => inside,
  path: '/desk/before-visits',
  component: lazyRouteComponent(() => import('./before-visits/before-visits-page.js'), 'BeforeVisitsPage'),
});

const disturbances = createRoute({
  getParentRoute: () => inside,
  path: '/desk/falls-away',
  component: lazyRouteComponent(() => import('./disturbances/disturbances-page.js'), 'DisturbancesPage'),
});

const disturbance = createRoute({
  getParentRoute: () => inside,
  path: '/desk/falls-away/$disturbanceId',
  component: lazyRouteComponent(() => import('./disturbances/disturbance-page.js'), 'DisturbancePage'),
});

const lostVisit = createRoute({
  getParentRoute: () => inside,
  path: '/desk/falls-away/visits/$appointmentId',
  component: lazyRouteComponent(() => import('./disturbances/lost-visit-page.js'), 'LostVisitPage'),
});

const deskOrders = createRoute({
  getParentRoute: () => inside,
  path: '/desk/lab-orders',
  component: lazyRouteComponent(() => import('./lab-orders/lab-orders-page.js'), 'LabOrdersPage'),
});

const benchOrders = createRoute({
  getParentRoute: () => inside,
  path: '/bench/orders',
  component: lazyRouteComponent(() => import('./lab-orders/lab-orders-page.js'), 'LabOrdersPage'),
});

const deskParcels = createRoute({
  getParentRoute: () => inside,
  path: '/desk/parcels',
  component: lazyRouteComponent(() => import('./parcels/parcels-page.js'), 'ParcelsPage'),
});

const benchParcels = createRoute({
  getParentRoute: () => inside,
  path: '/bench/parcels',
  component: lazyRouteComponent(() => import('./parcels/parcels-page.js'), 'ParcelsPage'),
});

const newPatient = createRoute({
  getParentRoute: () => inside,
  path: '/desk/patients/new',
  validateSearch: newPatientSearch,
  remountDeps: ({ search }) => search,
  component: lazyRouteComponent(() => import('./patient-form/new-patient-page.js'), 'NewPatientPage'),
});

const patient = createRoute({
  getParentRoute: () => inside,
  path: '/desk/patients/$patientId',
  component: lazyRouteComponent(() => import('./patient-form/patient-page.js'), 'PatientPage'),
});

const newCase = createRoute({
  getParentRoute: () => inside,
  path: '/desk/cases/new',
  validateSearch: newCaseSearch,
  remountDeps: ({ search }) => search,
  component: lazyRouteComponent(() => import('./open-case/open-case-page.js'), 'OpenCasePage'),
});

const freedTime = createRoute({
  getParentRoute: () => inside,
  path: '/desk/freed-time',
  validateSearch: freedSearch,
  remountDeps: ({ search }) => search,
  component: lazyRouteComponent(() => import('./freed-time/freed-time-page.js'), 'FreedTimePage'),
});

const oneCase = createRoute({
  getParentRoute: () => inside,
  path: '/desk/cases/$caseId',
  validateSearch: freedSearch,
  loader: ({ params: { caseId } }) => {
    ahead(() => queryClient.query(caseQuery(caseId)));
  },
  component: lazyRouteComponent(() => import('./case-page/case-page.js'), 'CasePage'),
});

const offers = createRoute({
  getParentRoute: () => inside,
  path: '/desk/cases/$caseId/offers',
  validateSearch: offersSearch,
  component: lazyRouteComponent(() => import('./offers/offers-page.js'), 'OffersPage'),
});

const itinerary = createRoute({
  getParentRoute: () => inside,
  path: '/desk/cases/$caseId/itinerary',
  component: lazyRouteComponent(() => import('./itinerary/itinerary-page.js'), 'ItineraryPage'),
});

const changeVisit = createRoute({
  getParentRoute: () => inside,
  path: '/desk/cases/$caseId/visits/$appointmentId',
  component: lazyRouteComponent(() => import('./change-visit/change-visit-page.js'), 'ChangeVisitPage'),
});

const caughtMail = createRoute({
  getParentRoute: () => inside,
  path: '/caught-mail',
  component: lazyRouteComponent(() => import('./caught-mail/caught-mail-page.js'), 'CaughtMailPage'),
});

const bench = createRoute({
  getParentRoute: () => inside,
  path: '/bench',
  validateSearch: benchSearch,
  loaderDeps: ({ search }) => search,
  loader: ({ deps, context: { session } }) => {
    ahead(async (practice) => {
      const shown = shownBench(practice, deps, session.laboratoryIds);
      if (shown.laboratory === undefined) return;
      await Promise.all([queryClient.query(loadQuery(shown)), queryClient.query(dispatchQuery(shown))]);
    });
  },
  component: lazyRouteComponent(() => import('./bench/bench-page.js'), 'BenchPage'),
});

const labCase = createRoute({
  getParentRoute: () => inside,
  path: '/bench/cases/$caseId',
  component: lazyRouteComponent(() => import('./lab-case/lab-case-page.js'), 'LabCasePage'),
});

const labFind = createRoute({
  getParentRoute: () => inside,
  path: '/bench/find',
  validateSearch: findSearch,
  component: lazyRouteComponent(() => import('./lab-case/lab-find-page.js'), 'LabFindPage'),
});

const tickets = createRoute({
  getParentRoute: () => inside,
  path: '/bench/tickets',
  validateSearch: ticketSearch,
  remountDeps: ({ search }) => search,
  component: lazyRouteComponent(() => import('./tickets/tickets-page.js'), 'TicketsPage'),
});

const job = createRoute({
  getParentRoute: () => inside,
  path: '/bench/jobs/$stepId',
  component: lazyRouteComponent(() => import('./jobs/job-page.js'), 'JobPage'),
});

const remakes = createRoute({
  getParentRoute: () => inside,
  path: '/bench/remakes',
  validateSearch: remakeSearch,
  component: lazyRouteComponent(() => import('./remake-log/remake-log-page.js'), 'RemakeLogPage'),
});

const practice = createRoute({
  getParentRoute: () => inside,
  path: '/practice',
  component: lazyRouteComponent(() => import('./practice-page/practice-page.js'), 'PracticePage'),
});

const lots = createRoute({
  getParentRoute: () => inside,
  path: '/practice/lots',
  validateSearch: lotSearch,
  component: lazyRouteComponent(() => import('./lots/lots-page.js'), 'LotsPage'),
});

const setup = createRoute({
  getParentRoute: () => inside,
  path: '/practice/setup',
  component: lazyRouteComponent(() => import('./setup/setup-page.js'), 'SetupPage'),
});

const setupRecord = createRoute({
  getParentRoute: () => inside,
  path: '/practice/setup/$recordId',
  validateSearch: setupSearch,
  remountDeps: ({ params, search }) => ({ ...params, ...search }),
  component: lazyRouteComponent(() => import('./setup/record-page.js'), 'RecordPage'),
});

const users = createRoute({
  getParentRoute: () => inside,
  path: '/practice/users',
  component: lazyRouteComponent(() => import('./users/users-page.js'), 'UsersPage'),
});

const user = createRoute({
  getParentRoute: () => inside,
  path: '/practice/users/$userId',
  component: lazyRouteComponent(() => import('./users/user-page.js'), 'UserPage'),
});

const audit = createRoute({
  getParentRoute: () => inside,
  path: '/practice/audit',
  validateSearch: auditSearch,
  component: lazyRouteComponent(() => import('./audit-trail/audit-page.js'), 'AuditPage'),
});

const figures = createRoute({
  getParentRoute: () => inside,
  path: '/practice/figures',
  component: lazyRouteComponent(() => import('./figures/figures-page.js'), 'FiguresPage'),
});

const importFiles = createRoute({
  getParentRoute: () => inside,
  path: '/practice/import',
  component: lazyRouteComponent(() => import('./import/import-page.js'), 'ImportPage'),
});

const paths = createRoute({
  getParentRoute: () => inside,
  path: '/practice/paths',
  component: lazyRouteComponent(() => import('./paths/paths-page.js'), 'PathsPage'),
});

const path = createRoute({
  getParentRoute: () => inside,
  path: '/practice/paths/$versionId',
  validateSearch: pathSearch,
  component: lazyRouteComponent(() => import('./paths/path-page.js'), 'PathPage'),
});

const pathEdit = createRoute({
  getParentRoute: () => inside,
  path: '/practice/paths/$versionId/edit',
  component: lazyRouteComponent(() => import('./paths/path-edit-page.js'), 'PathEditPage'),
});

const rules = createRoute({
  getParentRoute: () => inside,
  path: '/practice/rules',
  component: lazyRouteComponent(() => import('./rules/rules-page.js'), 'RulesPage'),
});

const ranges = createRoute({
  getParentRoute: () => inside,
  path: '/practice/ranges',
  component: lazyRouteComponent(() => import('./ranges/ranges-page.js'), 'RangesPage'),
});

const toothList = createRoute({
  getParentRoute: () => inside,
  path: '/practice/teeth',
  component: lazyRouteComponent(() => import('./tooth-list/tooth-list-page.js'), 'ToothListPage'),
});

const checkFigures = createRoute({
  getParentRoute: () => inside,
  path: '/practice/checks',
  component: lazyRouteComponent(() => import('./check-figures/check-figures-page.js'), 'CheckFiguresPage'),
});

const ownPassword = createRoute({
  getParentRoute: () => inside,
  path: '/password',
  component: lazyRouteComponent(() => import('./own-password/own-password-page.js'), 'OwnPasswordPage'),
});

const chair = createRoute({
  getParentRoute: () => inside,
  path: '/chair',
  validateSearch: boardSearch,
  loaderDeps: ({ search: { on, clinic, clinician } }) => ({ on, clinic, clinician }),
  loader: ({ deps: { on, clinic, clinician }, context: { session } }) => {
    ahead(({ today }) => queryClient.query(boardQuery(on ?? today, clinic, chosenClinician(clinician, session))));
  },
  component: lazyRouteComponent(() => import('./stage-board/stage-board-page.js'), 'StageBoardPage'),
});

const stage = createRoute({
  getParentRoute: () => inside,
  path: '/chair/stages/$stageId',
  loader: ({ params: { stageId } }) => {
    ahead(() => queryClient.query(stageQuery(stageId)));
  },
  component: lazyRouteComponent(() => import('./stage/stage-page.js'), 'StagePage'),
});

const cautions = createRoute({
  getParentRoute: () => inside,
  path: '/chair/cases/$caseId/cautions',
  component: lazyRouteComponent(() => import('./cautions/cautions-page.js'), 'CautionsPage'),
});

const aftercare = createRoute({
  getParentRoute: () => inside,
  path: '/chair/cases/$caseId/aftercare',
  component: lazyRouteComponent(() => import('./aftercare/aftercare-page.js'), 'AftercarePage'),
});

const alert = createRoute({
  getParentRoute: () => inside,
  path: '/chair/alerts/$alertId',
  component: lazyRouteComponent(() => import('./alerts/alert-page.js'), 'AlertPage'),
});

export const router = createRouter({
  routeTree: root.addChildren([
    ...whileWorking,
    signIn,
    inside.addChildren([
      home,
      find,
      desk,
      calls,
      beforeVisits,
      disturbances,
      disturbance,
      lostVisit,
      deskParcels,
      benchParcels,
      deskOrders,
      benchOrders,
      newPatient,
      patient,
      newCase,
      freedTime,
      oneCase,
      offers,
      changeVisit,
      itinerary,
      caughtMail,
      bench,
      labCase,
      labFind,
      tickets,
      job,
      remakes,
      practice,
      lots,
      setup,
      setupRecord,
      users,
      user,
      audit,
      figures,
      importFiles,
      paths,
      path,
      pathEdit,
      rules,
      ranges,
      toothList,
      checkFigures,
      ownPassword,
      chair,
      stage,
      cautions,
      aftercare,
      alert,
    ]),
  ]),
  defaultPreload: 'intent',
  // Another case, patient or record in the address is another screen: nothing chosen or typed for the last one stays.
  defaultRemountDeps: ({ params }) => params,
});

// What the screen in the address wants in any case is fetched before anything is drawn: who is signed in, the practice, since
// nearly every screen says which day it has, and its code.
const [shown] = router.getMatchedRoutes(router.latestLocation.pathname);
if (shown.some(({ id }) => id === inside.id))
  void askSession()
    .then(() => queryClient.query(practiceQuery))
    .catch(() => undefined);
for (const { options } of shown) void options.component?.preload?.();

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}
