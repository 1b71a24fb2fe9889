import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const year = createRoute({
  getParentRoute: () => houseRoute,
  path: '/year-of-food',
  component: lazyRouteComponent(() => import('./year-of-food.tsx'), 'YearOfFood'),
});

export const yearOfMassRoutes = [year] as const;
