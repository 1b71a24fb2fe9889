import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const handover = createRoute({
  getParentRoute: () => houseRoute,
  path: '/handover',
  component: lazyRouteComponent(() => import('./handover.tsx'), 'Handover'),
});

export const handoverRoutes = [handover] as const;
