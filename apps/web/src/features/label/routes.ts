import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const labels = createRoute({
  getParentRoute: () => houseRoute,
  path: '/shelf/labels',
  component: lazyRouteComponent(() => import('./labels.tsx'), 'Labels'),
});

export const labelRoutes = [labels] as const;
