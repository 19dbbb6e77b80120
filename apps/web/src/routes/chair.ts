import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { ahead, aheadOf } from '../ahead.js';
import { queryClient } from '../api/queries.js';
import { boardQuery, chosenClinician } from '../stage-board/use-stage-board.js';
import { stageQuery } from '../stage/use-stage.js';
import { boardSearch } from '../search-params.js';
import { inside } from './inside.js';

const chair = createRoute({
  getParentRoute: () => inside,
  path: '/chair',
  validateSearch: boardSearch,
  loaderDeps: ({ search: { on, clinic, clinician } }) => ({ on, clinic, clinician }),
  loader: ({ deps: { on, clinic, clinician }, context: { session } }) => {
    aheadOf(({ today }) => queryClient.query(boardQuery(on ?? today, clinic, chosenClinician(clinician, session))));
  },
  component: lazyRouteComponent(() => import('../stage-board/stage-board-page.js'), 'StageBoardPage'),
});

const stage = createRoute({
  getParentRoute: () => inside,
  path: '/chair/stages/$stageId',
  loader: ({ params: { stageId } }) => {
    ahead(() => queryClient.query(stageQuery(stageId)));
  },
  component: lazyRouteComponent(() => import('../stage/stage-page.js'), 'StagePage'),
});

const cautions = createRoute({
  getParentRoute: () => inside,
  path: '/chair/cases/$caseId/cautions',
  component: lazyRouteComponent(() => import('../cautions/cautions-page.js'), 'CautionsPage'),
});

const aftercare = createRoute({
  getParentRoute: () => inside,
  path: '/chair/cases/$caseId/aftercare',
  component: lazyRouteComponent(() => import('../aftercare/aftercare-page.js'), 'AftercarePage'),
});

const course = createRoute({
  getParentRoute: () => inside,
  path: '/chair/cases/$caseId/course',
  component: lazyRouteComponent(() => import('../course/course-page.js'), 'CoursePage'),
});

const alert = createRoute({
  getParentRoute: () => inside,
  path: '/chair/alerts/$alertId',
  component: lazyRouteComponent(() => import('../alerts/alert-page.js'), 'AlertPage'),
});

/** Screens of whoever treats. */
export const chairRoutes = [chair, stage, cautions, aftercare, course, alert] as const;
