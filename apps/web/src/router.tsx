import {
  createRootRoute,
  createRoute,
  createRouter,
  lazyRouteComponent,
  Outlet,
  redirect,
} from '@tanstack/react-router';
import { queries, sessionQuery } from './api/queries.ts';
import { Lost, Stumbled } from './ui/lost.tsx';

const root = createRootRoute({ component: Outlet, notFoundComponent: Lost, errorComponent: Stumbled });

/** The front door leads a signed-in person into the storehouse, and anybody else to signing in. */
const door = createRoute({
  getParentRoute: () => root,
  path: '/',
  beforeLoad: async () => {
    const session = await queries.fetchQuery(sessionQuery).catch(() => null);
    const storehouse = session?.storehouses[0]?.storehouseId;
    if (storehouse === undefined) throw redirect({ to: '/sign-in' });
    throw redirect({ to: '/s/$storehouse', params: { storehouse } });
  },
});

const signIn = createRoute({
  getParentRoute: () => root,
  path: '/sign-in',
  validateSearch: (search: Record<string, unknown>): { to?: string } =>
    typeof search.to === 'string' && /^\/s\//.test(search.to) ? { to: search.to } : {},
  component: lazyRouteComponent(() => import('./features/session/sign-in.tsx'), 'SignIn'),
});
const setUp = createRoute({
  getParentRoute: () => root,
  path: '/set-up',
  component: lazyRouteComponent(() => import('./features/joining/set-up.tsx'), 'SetUp'),
});
const invitation = createRoute({
  getParentRoute: () => root,
  path: '/invitations/$storehouse/$token',
  component: lazyRouteComponent(() => import('./features/joining/invitation.tsx'), 'Invitation'),
});

const house = createRoute({
  getParentRoute: () => root,
  path: '/s/$storehouse',
  component: lazyRouteComponent(() => import('./ui/shell.tsx'), 'Shell'),
});
const home = createRoute({
  getParentRoute: () => house,
  path: '/',
  component: lazyRouteComponent(() => import('./features/home/home.tsx'), 'Home'),
});
const welcome = createRoute({
  getParentRoute: () => house,
  path: '/welcome',
  component: lazyRouteComponent(() => import('./features/joining/welcome.tsx'), 'Welcome'),
});
const household = createRoute({
  getParentRoute: () => house,
  path: '/household',
  component: lazyRouteComponent(() => import('./features/household/household.tsx'), 'Household'),
});
const statement = createRoute({
  getParentRoute: () => house,
  path: '/statement',
  component: lazyRouteComponent(() => import('./features/statement/statement.tsx'), 'Statement'),
});
const buys = createRoute({
  getParentRoute: () => house,
  path: '/buys',
  component: lazyRouteComponent(() => import('./features/buy/buys.tsx'), 'Buys'),
});
const buy = createRoute({
  getParentRoute: () => house,
  path: '/buys/$buy',
  component: lazyRouteComponent(() => import('./features/buy/buy.tsx'), 'Buy'),
});
const line = createRoute({
  getParentRoute: () => house,
  path: '/buys/$buy/lines/$line',
  component: lazyRouteComponent(() => import('./features/buy/line.tsx'), 'BuyLine'),
});

export const router = createRouter({
  routeTree: root.addChildren([
    door,
    signIn,
    setUp,
    invitation,
    house.addChildren([home, welcome, household, statement, buys, buy, line]),
  ]),
  defaultPreload: 'intent',
  scrollRestoration: true,
});

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}
