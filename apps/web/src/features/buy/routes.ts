import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const buys = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys',
  component: lazyRouteComponent(() => import('./buys.tsx'), 'Buys'),
});
const buy = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy',
  component: lazyRouteComponent(() => import('./buy.tsx'), 'Buy'),
});
const line = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy/lines/$line',
  component: lazyRouteComponent(() => import('./line.tsx'), 'BuyLine'),
});

export const buyRoutes = [buys, buy, line] as const;
