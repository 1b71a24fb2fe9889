import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const closing = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy/closing',
  component: lazyRouteComponent(() => import('./closing.tsx'), 'Closing'),
});

export const closingRoutes = [closing] as const;
