import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

/** Kinds stand here as text alone: this file is in every page's script. */
const trace = createRoute({
  getParentRoute: () => houseRoute,
  path: '/trace',
  validateSearch: (
    search: Record<string, unknown>,
  ): { code?: string; kind?: string; id?: string; task?: string } =>
    Object.fromEntries(
      ['code', 'kind', 'id', 'task'].flatMap((key) =>
        search[key] === undefined ? [] : [[key, String(search[key])]],
      ),
    ),
  component: lazyRouteComponent(() => import('./trace.tsx'), 'TracePage'),
});

export const traceRoutes = [trace] as const;
