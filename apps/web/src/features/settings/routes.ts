import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const settings = createRoute({
  getParentRoute: () => houseRoute,
  path: '/settings',
  component: lazyRouteComponent(() => import('./settings.tsx'), 'Settings'),
});

export const settingsRoutes = [settings] as const;
