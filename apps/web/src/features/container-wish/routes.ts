import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const wishes = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy/lines/$line/containers',
  component: lazyRouteComponent(() => import('./wishes.tsx'), 'ContainerWishes'),
});

export const containerWishRoutes = [wishes] as const;
