import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

// One part of the program for all of them: a hall has no signal, and whoever opened the first page can pour.
const pages = () => import('./pages.ts');

const sessions = createRoute({
  getParentRoute: () => houseRoute,
  path: '/packing',
  component: lazyRouteComponent(pages, 'Sessions'),
});
const open = createRoute({
  getParentRoute: () => houseRoute,
  path: '/packing/open',
  component: lazyRouteComponent(pages, 'OpenSession'),
});
const session = createRoute({
  getParentRoute: () => houseRoute,
  path: '/packing/$session',
  component: lazyRouteComponent(pages, 'Session'),
});
const plan = createRoute({
  getParentRoute: () => houseRoute,
  path: '/packing/$session/plan',
  component: lazyRouteComponent(pages, 'Plan'),
});
const log = createRoute({
  getParentRoute: () => houseRoute,
  path: '/packing/$session/log',
  component: lazyRouteComponent(pages, 'Log'),
});

const labels = createRoute({
  getParentRoute: () => houseRoute,
  path: '/packing/$session/labels',
  component: lazyRouteComponent(pages, 'LabelsAhead'),
});

const tares = createRoute({
  getParentRoute: () => houseRoute,
  path: '/packing/$session/tares',
  component: lazyRouteComponent(pages, 'TenEmpties'),
});

const change = createRoute({
  getParentRoute: () => houseRoute,
  path: '/packing/$session/change',
  component: lazyRouteComponent(pages, 'ChangeSession'),
});

export const packingRoutes = [sessions, open, session, change, plan, log, labels, tares] as const;
