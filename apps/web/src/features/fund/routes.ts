import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const fund = createRoute({
  getParentRoute: () => houseRoute,
  path: '/books/fund',
  component: lazyRouteComponent(() => import('./fund.tsx'), 'FundPage'),
});

export const fundRoutes = [fund] as const;
