import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { aheadOf } from '../ahead.js';
import { queryClient } from '../api/queries.js';
import { dispatchQuery, loadQuery, shownBench } from '../bench/use-bench.js';
import { benchSearch, findSearch, remakeSearch, ticketSearch } from '../search-params.js';
import { inside } from './inside.js';

const benchOrders = createRoute({
  getParentRoute: () => inside,
  path: '/bench/orders',
  component: lazyRouteComponent(() => import('../lab-orders/lab-orders-page.js'), 'LabOrdersPage'),
});

const benchParcels = createRoute({
  getParentRoute: () => inside,
  path: '/bench/parcels',
  component: lazyRouteComponent(() => import('../parcels/parcels-page.js'), 'ParcelsPage'),
});

const bench = createRoute({
  getParentRoute: () => inside,
  path: '/bench',
  validateSearch: benchSearch,
  loaderDeps: ({ search }) => search,
  loader: ({ deps, context: { session } }) => {
    aheadOf(async (practice) => {
      const shown = shownBench(practice, deps, session.laboratoryIds);
      if (shown.laboratory === undefined) return;
      await Promise.all([queryClient.query(loadQuery(shown)), queryClient.query(dispatchQuery(shown))]);
    });
  },
  component: lazyRouteComponent(() => import('../bench/bench-page.js'), 'BenchPage'),
});

const labCase = createRoute({
  getParentRoute: () => inside,
  path: '/bench/cases/$caseId',
  component: lazyRouteComponent(() => import('../lab-case/lab-case-page.js'), 'LabCasePage'),
});

const labFind = createRoute({
  getParentRoute: () => inside,
  path: '/bench/find',
  validateSearch: findSearch,
  component: lazyRouteComponent(() => import('../lab-case/lab-find-page.js'), 'LabFindPage'),
});

const tickets = createRoute({
  getParentRoute: () => inside,
  path: '/bench/tickets',
  validateSearch: ticketSearch,
  remountDeps: ({ search }) => search,
  component: lazyRouteComponent(() => import('../tickets/tickets-page.js'), 'TicketsPage'),
});

const job = createRoute({
  getParentRoute: () => inside,
  path: '/bench/jobs/$stepId',
  component: lazyRouteComponent(() => import('../jobs/job-page.js'), 'JobPage'),
});

const remakes = createRoute({
  getParentRoute: () => inside,
  path: '/bench/remakes',
  validateSearch: remakeSearch,
  component: lazyRouteComponent(() => import('../remake-log/remake-log-page.js'), 'RemakeLogPage'),
});

/** Screens of the laboratory. */
export const benchRoutes = [benchOrders, benchParcels, bench, labCase, labFind, tickets, job, remakes] as const;
