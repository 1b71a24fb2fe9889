import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const bringOver = createRoute({
  getParentRoute: () => houseRoute,
  path: '/import',
  component: lazyRouteComponent(() => import('./import.tsx'), 'Import'),
});
const equipment = createRoute({
  getParentRoute: () => houseRoute,
  path: '/equipment',
  component: lazyRouteComponent(() => import('./equipment.tsx'), 'Equipment'),
});

export const importRoutes = [bringOver, equipment] as const;
