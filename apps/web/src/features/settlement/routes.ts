import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const settlement = createRoute({
  getParentRoute: () => houseRoute,
  path: '/packing/$session/settlement',
  component: lazyRouteComponent(() => import('./settlement.tsx'), 'Settlement'),
});

export const settlementRoutes = [settlement] as const;
