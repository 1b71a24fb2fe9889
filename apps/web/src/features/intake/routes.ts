import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const list = createRoute({
  getParentRoute: () => houseRoute,
  path: '/intakes',
  component: lazyRouteComponent(() => import('./taken-in.tsx'), 'TakenInPage'),
});
const interview = createRoute({
  getParentRoute: () => houseRoute,
  path: '/intakes/new',
  component: lazyRouteComponent(() => import('./interview.tsx'), 'InterviewPage'),
});

export const intakeRoutes = [list, interview] as const;
