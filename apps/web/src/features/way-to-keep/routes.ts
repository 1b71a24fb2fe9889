import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const ways = createRoute({
  getParentRoute: () => houseRoute,
  path: '/shelf/ways',
  component: lazyRouteComponent(() => import('./ways.tsx'), 'WaysToKeep'),
});

export const wayToKeepRoutes = [ways] as const;
