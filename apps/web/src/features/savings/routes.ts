import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const savings = createRoute({
  getParentRoute: () => houseRoute,
  path: '/savings',
  component: lazyRouteComponent(() => import('./savings.tsx'), 'Savings'),
});

export const savingsRoutes = [savings] as const;
