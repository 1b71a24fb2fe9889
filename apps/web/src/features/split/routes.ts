import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const split = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy/split',
  component: lazyRouteComponent(() => import('./split-list.tsx'), 'SplitList'),
});
const line = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy/split/$line',
  component: lazyRouteComponent(() => import('./split-line.tsx'), 'SplitLine'),
});

const simulation = createRoute({
  getParentRoute: () => houseRoute,
  path: '/split-simulation',
  component: lazyRouteComponent(() => import('./simulation.tsx'), 'Simulation'),
});

export const splitRoutes = [split, line, simulation] as const;
