import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';
import type { EntriesOf } from './queries.ts';

const getParentRoute = () => houseRoute;

const desk = createRoute({
  getParentRoute,
  path: '/books',
  component: lazyRouteComponent(() => import('./desk.tsx'), 'Desk'),
});
const owing = createRoute({
  getParentRoute,
  path: '/books/owing',
  component: lazyRouteComponent(() => import('./owing.tsx'), 'OwingPage'),
});
const clearing = createRoute({
  getParentRoute,
  path: '/books/clearing/$buy',
  component: lazyRouteComponent(() => import('./clearing.tsx'), 'Clearing'),
});
const trialBalance = createRoute({
  getParentRoute,
  path: '/books/trial-balance',
  component: lazyRouteComponent(() => import('./trial-balance.tsx'), 'TrialBalance'),
});
const entries = createRoute({
  getParentRoute,
  path: '/books/entries',
  validateSearch: (search: Record<string, unknown>): Omit<EntriesOf, 'account'> =>
    Object.fromEntries(
      (['chart', 'buy', 'household', 'words', 'what', 'fromOn', 'toOn'] as const).flatMap((name) =>
        typeof search[name] === 'string' || typeof search[name] === 'number'
          ? [[name, String(search[name])]]
          : [],
      ),
    ),
  component: lazyRouteComponent(() => import('./entries.tsx'), 'Entries'),
});
const entry = createRoute({
  getParentRoute,
  path: '/books/entries/$entry',
  component: lazyRouteComponent(() => import('./entry.tsx'), 'Entry'),
});
const account = createRoute({
  getParentRoute,
  path: '/books/accounts/$account',
  component: lazyRouteComponent(() => import('./entries.tsx'), 'AccountEntries'),
});
const claims = createRoute({
  getParentRoute,
  path: '/books/claims',
  component: lazyRouteComponent(() => import('./claims.tsx'), 'ClaimsPage'),
});
const deposits = createRoute({
  getParentRoute,
  path: '/books/deposits',
  component: lazyRouteComponent(() => import('./deposits.tsx'), 'DepositsPage'),
});
const bills = createRoute({
  getParentRoute,
  path: '/books/bills',
  component: lazyRouteComponent(() => import('./bills.tsx'), 'Bills'),
});
const statements = createRoute({
  getParentRoute,
  path: '/books/statements',
  component: lazyRouteComponent(() => import('./statements.tsx'), 'Statements'),
});
const householdStatement = createRoute({
  getParentRoute,
  path: '/books/statements/$household',
  component: lazyRouteComponent(() => import('./statements.tsx'), 'HouseholdStatementPage'),
});
const writeOffs = createRoute({
  getParentRoute,
  path: '/books/write-offs',
  component: lazyRouteComponent(() => import('./write-offs.tsx'), 'WriteOffs'),
});

export const booksRoutes = [
  desk,
  owing,
  claims,
  deposits,
  bills,
  statements,
  householdStatement,
  writeOffs,
  clearing,
  trialBalance,
  entries,
  entry,
  account,
] as const;
