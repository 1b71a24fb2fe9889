import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';
import type { Whose } from '../place/queries.ts';

const lids = createRoute({
  getParentRoute: () => houseRoute,
  path: '/shelf/lids',
  validateSearch: ({ of }: Record<string, unknown>): { of?: Whose } =>
    of === 'common' || of === 'household' ? { of } : {},
  component: lazyRouteComponent(() => import('./lids-page.tsx'), 'LidsPage'),
});

export const lidRoutes = [lids] as const;
