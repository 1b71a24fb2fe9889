import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const shelf = createRoute({
  getParentRoute: () => houseRoute,
  path: '/shelf',
  component: lazyRouteComponent(() => import('./shelf.tsx'), 'Shelf'),
});
const pack = createRoute({
  getParentRoute: () => houseRoute,
  path: '/shelf/pack',
  component: lazyRouteComponent(() => import('./pack.tsx'), 'Pack'),
});
const record = createRoute({
  getParentRoute: () => houseRoute,
  path: '/shelf/record',
  component: lazyRouteComponent(() => import('./record.tsx'), 'Record'),
});
const container = createRoute({
  getParentRoute: () => houseRoute,
  path: '/shelf/$container',
  component: lazyRouteComponent(() => import('./container.tsx'), 'Container'),
});

export const shelfRoutes = [shelf, pack, record, container] as const;
