import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const kinds = createRoute({
  getParentRoute: () => houseRoute,
  path: '/containers',
  component: lazyRouteComponent(() => import('./kinds.tsx'), 'ContainerKinds'),
});

export const containerKindRoutes = [kinds] as const;
