import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const shelf = createRoute({
  getParentRoute: () => houseRoute,
  path: '/packing/supplies',
  component: lazyRouteComponent(() => import('./shelf.tsx'), 'Shelf'),
});
const shopping = createRoute({
  getParentRoute: () => houseRoute,
  path: '/packing/$session/shopping',
  component: lazyRouteComponent(() => import('./shopping.tsx'), 'Shopping'),
});

export const supplyRoutes = [shelf, shopping] as const;
