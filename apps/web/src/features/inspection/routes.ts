import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';
import type { Whose } from '../place/queries.ts';

const due = createRoute({
  getParentRoute: () => houseRoute,
  path: '/inspections',
  // A sheet of common stock leads back to common stock.
  validateSearch: ({ of }: Record<string, unknown>): { of?: Whose } =>
    of === 'common' || of === 'household' ? { of } : {},
  component: lazyRouteComponent(() => import('./due.tsx'), 'DuePage'),
});
const look = createRoute({
  getParentRoute: () => houseRoute,
  path: '/inspections/$container',
  component: lazyRouteComponent(() => import('./look.tsx'), 'LookPage'),
});

export const inspectionRoutes = [due, look] as const;
