import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const claim = createRoute({
  getParentRoute: () => houseRoute,
  path: '/books/claims/$claim',
  component: lazyRouteComponent(() => import('./claim.tsx'), 'Claim'),
});

export const claimRoutes = [claim] as const;
