import { createRoute, createRouter, lazyRouteComponent } from '@tanstack/react-router';
import { practiceQuery, queryClient } from './api/queries.js';
import { benchRoutes } from './routes/bench.js';
import { chairRoutes } from './routes/chair.js';
import { deskRoutes } from './routes/desk.js';
import { everywhereRoutes } from './routes/everywhere.js';
import { askSession, inside, root } from './routes/inside.js';
import { practiceRoutes } from './routes/practice.js';
import { signInSearch } from './search-params.js';
import { SignInPage } from './sign-in/sign-in-page.js';

const signIn = createRoute({
  getParentRoute: () => root,
  path: '/sign-in',
  validateSearch: signInSearch,
  component: SignInPage,
});

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

export const router = createRouter({
  routeTree: root.addChildren([
    ...whileWorking,
    signIn,
    inside.addChildren([...everywhereRoutes, ...deskRoutes, ...benchRoutes, ...chairRoutes, ...practiceRoutes]),
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
