import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const getParentRoute = () => houseRoute;

const holds = createRoute({
  getParentRoute,
  path: '/holds',
  component: lazyRouteComponent(() => import('./holds.tsx'), 'Holds'),
});
const hold = createRoute({
  getParentRoute,
  path: '/holds/$hold',
  component: lazyRouteComponent(() => import('./hold.tsx'), 'HoldPage'),
});

export const holdRoutes = [holds, hold] as const;
