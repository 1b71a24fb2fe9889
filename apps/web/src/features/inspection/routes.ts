import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const due = createRoute({
  getParentRoute: () => houseRoute,
  path: '/inspections',
  component: lazyRouteComponent(() => import('./due.tsx'), 'DuePage'),
});
const look = createRoute({
  getParentRoute: () => houseRoute,
  path: '/inspections/$container',
  component: lazyRouteComponent(() => import('./look.tsx'), 'LookPage'),
});

export const inspectionRoutes = [due, look] as const;
