import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const home = createRoute({
  getParentRoute: () => houseRoute,
  path: '/giving',
  component: lazyRouteComponent(() => import('./giving.tsx'), 'Giving'),
});
const pantries = createRoute({
  getParentRoute: () => houseRoute,
  path: '/giving/pantries',
  component: lazyRouteComponent(() => import('./pantries.tsx'), 'Pantries'),
});
const addPantry = createRoute({
  getParentRoute: () => houseRoute,
  path: '/giving/pantries/new',
  component: lazyRouteComponent(() => import('./pantry-form.tsx'), 'NewPantry'),
});
const pantry = createRoute({
  getParentRoute: () => houseRoute,
  path: '/giving/pantries/$pantry',
  component: lazyRouteComponent(() => import('./pantry.tsx'), 'PantryPage'),
});
const match = createRoute({
  getParentRoute: () => houseRoute,
  path: '/giving/match',
  component: lazyRouteComponent(() => import('./match-form.tsx'), 'MatchForm'),
});
const matching = createRoute({
  getParentRoute: () => houseRoute,
  path: '/giving/matchings/$matching',
  component: lazyRouteComponent(() => import('./matching.tsx'), 'MatchingPage'),
});
const manifest = createRoute({
  getParentRoute: () => houseRoute,
  path: '/giving/manifests/$manifest',
  component: lazyRouteComponent(() => import('./manifest.tsx'), 'ManifestPage'),
});
const year = createRoute({
  getParentRoute: () => houseRoute,
  path: '/giving/year',
  component: lazyRouteComponent(() => import('./year.tsx'), 'GiftYear'),
});

const risk = createRoute({
  getParentRoute: () => houseRoute,
  path: '/giving/risk',
  component: lazyRouteComponent(() => import('./store-risk.tsx'), 'StoreRisk'),
});

export const givingRoutes = [
  home,
  risk,
  pantries,
  addPantry,
  pantry,
  match,
  matching,
  manifest,
  year,
] as const;
