import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const ageing = createRoute({
  getParentRoute: () => houseRoute,
  path: '/books/ageing',
  component: lazyRouteComponent(() => import('./ageing.tsx'), 'Ageing'),
});

export const ageingRoutes = [ageing] as const;
