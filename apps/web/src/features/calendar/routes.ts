import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const calendar = createRoute({
  getParentRoute: () => houseRoute,
  path: '/calendar',
  component: lazyRouteComponent(() => import('./calendar.tsx'), 'Calendar'),
});

export const calendarRoutes = [calendar] as const;
