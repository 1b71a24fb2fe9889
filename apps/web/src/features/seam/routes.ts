import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const pages = () => import('./pages.ts');

const machines = createRoute({
  getParentRoute: () => houseRoute,
  path: '/packing/machines',
  component: lazyRouteComponent(pages, 'Machines'),
});
const seals = createRoute({
  getParentRoute: () => houseRoute,
  path: '/packing/$session/seals',
  component: lazyRouteComponent(pages, 'Seals'),
});

const doubts = createRoute({
  getParentRoute: () => houseRoute,
  path: '/shelf/doubts',
  component: lazyRouteComponent(pages, 'Doubts'),
});

export const seamRoutes = [machines, seals, doubts] as const;
