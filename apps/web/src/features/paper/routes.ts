import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const paper = createRoute({
  getParentRoute: () => houseRoute,
  path: '/papers/$code',
  component: lazyRouteComponent(() => import('./paper.tsx'), 'Paper'),
});

export const paperRoutes = [paper] as const;
