import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { auditSearch, lotSearch, pathSearch, setupSearch } from '../search-params.js';
import { inside } from './inside.js';

const practice = createRoute({
  getParentRoute: () => inside,
  path: '/practice',
  component: lazyRouteComponent(() => import('../practice-page/practice-page.js'), 'PracticePage'),
});

const lots = createRoute({
  getParentRoute: () => inside,
  path: '/practice/lots',
  validateSearch: lotSearch,
  component: lazyRouteComponent(() => import('../lots/lots-page.js'), 'LotsPage'),
});

const setup = createRoute({
  getParentRoute: () => inside,
  path: '/practice/setup',
  component: lazyRouteComponent(() => import('../setup/setup-page.js'), 'SetupPage'),
});

const setupRecord = createRoute({
  getParentRoute: () => inside,
  path: '/practice/setup/$recordId',
  validateSearch: setupSearch,
  remountDeps: ({ params, search }) => ({ ...params, ...search }),
  component: lazyRouteComponent(() => import('../setup/record-page.js'), 'RecordPage'),
});

const users = createRoute({
  getParentRoute: () => inside,
  path: '/practice/users',
  component: lazyRouteComponent(() => import('../users/users-page.js'), 'UsersPage'),
});

const user = createRoute({
  getParentRoute: () => inside,
  path: '/practice/users/$userId',
  component: lazyRouteComponent(() => import('../users/user-page.js'), 'UserPage'),
});

const audit = createRoute({
  getParentRoute: () => inside,
  path: '/practice/audit',
  validateSearch: auditSearch,
  component: lazyRouteComponent(() => import('../audit-trail/audit-page.js'), 'AuditPage'),
});

const figures = createRoute({
  getParentRoute: () => inside,
  path: '/practice/figures',
  component: lazyRouteComponent(() => import('../figures/figures-page.js'), 'FiguresPage'),
});

const importFiles = createRoute({
  getParentRoute: () => inside,
  path: '/practice/import',
  component: lazyRouteComponent(() => import('../import/import-page.js'), 'ImportPage'),
});

const paths = createRoute({
  getParentRoute: () => inside,
  path: '/practice/paths',
  component: lazyRouteComponent(() => import('../paths/paths-page.js'), 'PathsPage'),
});

const path = createRoute({
  getParentRoute: () => inside,
  path: '/practice/paths/$versionId',
  validateSearch: pathSearch,
  component: lazyRouteComponent(() => import('../paths/path-page.js'), 'PathPage'),
});

const pathEdit = createRoute({
  getParentRoute: () => inside,
  path: '/practice/paths/$versionId/edit',
  component: lazyRouteComponent(() => import('../paths/path-edit-page.js'), 'PathEditPage'),
});

const rules = createRoute({
  getParentRoute: () => inside,
  path: '/practice/rules',
  component: lazyRouteComponent(() => import('../rules/rules-page.js'), 'RulesPage'),
});

const messageTexts = createRoute({
  getParentRoute: () => inside,
  path: '/practice/messages',
  component: lazyRouteComponent(() => import('../message-texts/message-texts-page.js'), 'MessageTextsPage'),
});

const ranges = createRoute({
  getParentRoute: () => inside,
  path: '/practice/ranges',
  component: lazyRouteComponent(() => import('../ranges/ranges-page.js'), 'RangesPage'),
});

const toothList = createRoute({
  getParentRoute: () => inside,
  path: '/practice/teeth',
  component: lazyRouteComponent(() => import('../tooth-list/tooth-list-page.js'), 'ToothListPage'),
});

const checkFigures = createRoute({
  getParentRoute: () => inside,
  path: '/practice/checks',
  component: lazyRouteComponent(() => import('../check-figures/check-figures-page.js'), 'CheckFiguresPage'),
});

/** Screens of the managers. */
export const practiceRoutes = [
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
  messageTexts,
  ranges,
  toothList,
  checkFigures,
] as const;
