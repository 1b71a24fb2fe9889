import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const handingOver = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy/handing-over',
  component: lazyRouteComponent(() => import('./handing-over.tsx'), 'HandingOver'),
});

export const handingOverRoutes = [handingOver] as const;
