import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const rotation = createRoute({
  getParentRoute: () => houseRoute,
  path: '/rotation',
  component: lazyRouteComponent(() => import('./rotation.tsx'), 'RotationPage'),
});

export const rotationRoutes = [rotation] as const;
