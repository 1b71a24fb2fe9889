import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const people = createRoute({
  getParentRoute: () => houseRoute,
  path: '/people',
  component: lazyRouteComponent(() => import('./people.tsx'), 'People'),
});
const invitations = createRoute({
  getParentRoute: () => houseRoute,
  path: '/people/invitations',
  component: lazyRouteComponent(() => import('./invitations.tsx'), 'Invitations'),
});
const duties = createRoute({
  getParentRoute: () => houseRoute,
  path: '/people/duties',
  component: lazyRouteComponent(() => import('./duty-history.tsx'), 'DutyHistory'),
});
const neighbour = createRoute({
  getParentRoute: () => houseRoute,
  path: '/people/$household',
  component: lazyRouteComponent(() => import('./neighbour.tsx'), 'Neighbour'),
});
const own = createRoute({
  getParentRoute: () => houseRoute,
  path: '/household/private',
  component: lazyRouteComponent(() => import('./private.tsx'), 'Private'),
});
const password = createRoute({
  getParentRoute: () => houseRoute,
  path: '/password',
  component: lazyRouteComponent(() => import('./password.tsx'), 'Password'),
});

export const peopleRoutes = [people, invitations, duties, neighbour, own, password] as const;
