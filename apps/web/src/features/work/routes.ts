import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const work = createRoute({
  getParentRoute: () => houseRoute,
  path: '/settings/work',
  component: lazyRouteComponent(() => import('./background-work.tsx'), 'Work'),
});

export const workRoutes = [work] as const;
