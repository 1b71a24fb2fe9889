import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const treatments = createRoute({
  getParentRoute: () => houseRoute,
  path: '/treatments',
  component: lazyRouteComponent(() => import('./treatments.tsx'), 'Treatments'),
});

export const treatmentRoutes = [treatments] as const;
