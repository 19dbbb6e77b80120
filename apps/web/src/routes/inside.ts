import { createRootRoute, createRoute, Outlet, redirect } from '@tanstack/react-router';
import { hasStatus } from '../api/errors.js';
import { queryClient, sessionQuery } from '../api/queries.js';
import { sessionGood } from '../api/session-watch.js';
import { Frame } from '../frame/frame.js';
import { Crash, NotFound } from '../frame/not-found.js';
import { doorFor } from '../frame/places-view.js';

export const root = createRootRoute({ component: Outlet, notFoundComponent: NotFound, errorComponent: Crash });

/** Who is signed in, asked once for a page. */
export const askSession = () => queryClient.query({ ...sessionQuery, staleTime: 'static' });

/** Everything behind the sign-in. Whoever comes without a session signs in first and lands where they wanted to go. */
export const inside = createRoute({
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
