import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const coverage = createRoute({
  getParentRoute: () => houseRoute,
  path: '/coverage',
  component: lazyRouteComponent(() => import('./coverage-page.tsx'), 'CoveragePage'),
});

export const coverageRoutes = [coverage] as const;
