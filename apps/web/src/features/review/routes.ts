import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const getParentRoute = () => houseRoute;

const audit = createRoute({
  getParentRoute,
  path: '/books/audit',
  component: lazyRouteComponent(() => import('./audit.tsx'), 'AuditPage'),
});
const traces = createRoute({
  getParentRoute,
  path: '/books/traces',
  validateSearch: (search: Record<string, unknown>): { seed?: string } =>
    search.seed === undefined ? {} : { seed: String(search.seed) },
  component: lazyRouteComponent(() => import('./traces.tsx'), 'Traces'),
});
const counts = createRoute({
  getParentRoute,
  path: '/books/counts',
  component: lazyRouteComponent(() => import('./counts.tsx'), 'Counts'),
});
const year = createRoute({
  getParentRoute,
  path: '/books/year',
  component: lazyRouteComponent(() => import('./year.tsx'), 'Year'),
});

export const reviewRoutes = [audit, traces, counts, year] as const;
