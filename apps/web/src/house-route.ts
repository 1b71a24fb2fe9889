import { createRootRoute, createRoute, lazyRouteComponent, Outlet } from '@tanstack/react-router';
import { Lost, Stumbled } from './ui/lost.tsx';

export const rootRoute = createRootRoute({
  component: Outlet,
  notFoundComponent: Lost,
  errorComponent: Stumbled,
});

/** Every page inside a storehouse hangs on this; each feature lists its own pages in its `routes.ts`. */
export const houseRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/s/$storehouse',
  component: lazyRouteComponent(() => import('./ui/shell.tsx'), 'Shell'),
});
