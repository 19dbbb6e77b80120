import { createRoute, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { homeOf } from '../frame/places-view.js';
import { findSearch } from '../search-params.js';
import { inside } from './inside.js';

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
  component: lazyRouteComponent(() => import('../find/find-page.js'), 'FindPage'),
});

const caughtMail = createRoute({
  getParentRoute: () => inside,
  path: '/caught-mail',
  component: lazyRouteComponent(() => import('../caught-mail/caught-mail-page.js'), 'CaughtMailPage'),
});

const ownPassword = createRoute({
  getParentRoute: () => inside,
  path: '/password',
  component: lazyRouteComponent(() => import('../own-password/own-password-page.js'), 'OwnPasswordPage'),
});

/** Screens that belong to no workplace. */
export const everywhereRoutes = [home, find, caughtMail, ownPassword] as const;
