import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const tin = createRoute({
  getParentRoute: () => houseRoute,
  path: '/books/tin',
  component: lazyRouteComponent(() => import('./tin.tsx'), 'Tin'),
});

export const tinRoutes = [tin] as const;
