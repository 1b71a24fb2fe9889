import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const bringOver = createRoute({
  getParentRoute: () => houseRoute,
  path: '/import',
  component: lazyRouteComponent(() => import('./import.tsx'), 'Import'),
});
export const importRoutes = [bringOver] as const;
