import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const all = createRoute({
  getParentRoute: () => houseRoute,
  path: '/places',
  component: lazyRouteComponent(() => import('./places.tsx'), 'Places'),
});
const add = createRoute({
  getParentRoute: () => houseRoute,
  path: '/places/new',
  component: lazyRouteComponent(() => import('./place-form.tsx'), 'NewPlace'),
});
const summer = createRoute({
  getParentRoute: () => houseRoute,
  path: '/places/summer',
  component: lazyRouteComponent(() => import('./summer.tsx'), 'SummerPage'),
});
const one = createRoute({
  getParentRoute: () => houseRoute,
  path: '/places/$place',
  component: lazyRouteComponent(() => import('./place.tsx'), 'PlacePage'),
});

export const placeRoutes = [all, add, summer, one] as const;
