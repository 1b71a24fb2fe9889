import { createRoute, createRouter, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { api, ask } from './api/client.ts';
import { queries, sessionQuery } from './api/queries.ts';
import { ageingRoutes } from './features/ageing/routes.ts';
import { bankRoutes } from './features/bank/routes.ts';
import { booksRoutes } from './features/books/routes.ts';
import { buyRoutes } from './features/buy/routes.ts';
import { calendarRoutes } from './features/calendar/routes.ts';
import { claimRoutes } from './features/claim/routes.ts';
import { closingRoutes } from './features/closing/routes.ts';
import { containerKindRoutes } from './features/container-kind/routes.ts';
import { containerWishRoutes } from './features/container-wish/routes.ts';
import { coverageRoutes } from './features/coverage/routes.ts';
import { equipmentRoutes } from './features/equipment/routes.ts';
import { foodRoutes } from './features/food/routes.ts';
import { fundRoutes } from './features/fund/routes.ts';
import { givingRoutes } from './features/giving/routes.ts';
import { handingOverRoutes } from './features/handing-over/routes.ts';
import { handoverRoutes } from './features/handover/routes.ts';
import { holdRoutes } from './features/hold/routes.ts';
import { importRoutes } from './features/import/routes.ts';
import { inspectionRoutes } from './features/inspection/routes.ts';
import { intakeRoutes } from './features/intake/routes.ts';
import { labelRoutes } from './features/label/routes.ts';
import { landingRoutes } from './features/landing/routes.ts';
import { lidRoutes } from './features/lid/routes.ts';
import { noticeRoutes } from './features/notices/routes.ts';
import { offerRoutes } from './features/offer/routes.ts';
import { packingRoutes } from './features/packing/routes.ts';
import { paperRoutes } from './features/paper/routes.ts';
import { paymentsRoutes } from './features/payments/routes.ts';
import { peopleRoutes } from './features/people/routes.ts';
import { placeRoutes } from './features/place/routes.ts';
import { reviewRoutes } from './features/review/routes.ts';
import { rotationRoutes } from './features/rotation/routes.ts';
import { savingsRoutes } from './features/savings/routes.ts';
import { seamRoutes } from './features/seam/routes.ts';
import { settingsRoutes } from './features/settings/routes.ts';
import { settlementRoutes } from './features/settlement/routes.ts';
import { shelfRoutes } from './features/shelf/routes.ts';
import { splitRoutes } from './features/split/routes.ts';
import { supplyRoutes } from './features/supplies/routes.ts';
import { tinRoutes } from './features/tin/routes.ts';
import { traceRoutes } from './features/trace/routes.ts';
import { treatmentRoutes } from './features/treatment/routes.ts';
import { wayToKeepRoutes } from './features/way-to-keep/routes.ts';
import { workRoutes } from './features/work/routes.ts';
import { yearOfMassRoutes } from './features/year-of-mass/routes.ts';
import { houseRoute, rootRoute } from './house-route.ts';

/** The front door leads a signed-in person into the storehouse, the first visitor to the first run, others to signing in. */
const door = createRoute({
  getParentRoute: () => rootRoute,
  path: '/',
  beforeLoad: async () => {
    // Without a signal whoever was here is known still.
    const known = () => queries.getQueryData(sessionQuery.queryKey);
    const session = await queries.fetchQuery(sessionQuery).catch(known);
    const storehouse = session?.storehouses[0]?.storehouseId;
    if (storehouse === undefined) throw redirect({ to: (await isFirstRun()) ? '/set-up' : '/sign-in' });
    throw redirect({ to: '/s/$storehouse', params: { storehouse } });
  },
});

/** Without an answer nobody is asked to set up what may be set up already. */
const isFirstRun = () =>
  ask(api['set-up'].$get()).then(
    ({ isSetUp }) => !isSetUp,
    () => false,
  );

const signIn = createRoute({
  getParentRoute: () => rootRoute,
  path: '/sign-in',
  validateSearch: (search: Record<string, unknown>): { to?: string } =>
    typeof search.to === 'string' && /^\/s\//.test(search.to) ? { to: search.to } : {},
  component: lazyRouteComponent(() => import('./features/session/sign-in.tsx'), 'SignIn'),
});
const setUp = createRoute({
  getParentRoute: () => rootRoute,
  path: '/set-up',
  component: lazyRouteComponent(() => import('./features/joining/set-up.tsx'), 'SetUp'),
});
const invitation = createRoute({
  getParentRoute: () => rootRoute,
  path: '/invitations/$storehouse/$token',
  component: lazyRouteComponent(() => import('./features/joining/invitation.tsx'), 'Invitation'),
});

const home = createRoute({
  getParentRoute: () => houseRoute,
  path: '/',
  component: lazyRouteComponent(() => import('./features/home/home.tsx'), 'Home'),
});
const welcome = createRoute({
  getParentRoute: () => houseRoute,
  path: '/welcome',
  component: lazyRouteComponent(() => import('./features/joining/welcome.tsx'), 'Welcome'),
});
const household = createRoute({
  getParentRoute: () => houseRoute,
  path: '/household',
  component: lazyRouteComponent(() => import('./features/household/household.tsx'), 'Household'),
});
const statement = createRoute({
  getParentRoute: () => houseRoute,
  path: '/statement',
  component: lazyRouteComponent(() => import('./features/statement/statement.tsx'), 'Statement'),
});
export const router = createRouter({
  routeTree: rootRoute.addChildren([
    door,
    signIn,
    setUp,
    invitation,
    houseRoute.addChildren([
      home,
      welcome,
      household,
      statement,
      ...noticeRoutes,
      ...packingRoutes,
      ...seamRoutes,
      ...supplyRoutes,
      ...settlementRoutes,
      ...paperRoutes,
      ...buyRoutes,
      ...booksRoutes,
      ...importRoutes,
      ...equipmentRoutes,
      ...reviewRoutes,
      ...bankRoutes,
      ...calendarRoutes,
      ...tinRoutes,
      ...ageingRoutes,
      ...fundRoutes,
      ...paymentsRoutes,
      ...claimRoutes,
      ...coverageRoutes,
      ...shelfRoutes,
      ...rotationRoutes,
      ...inspectionRoutes,
      ...lidRoutes,
      ...intakeRoutes,
      ...placeRoutes,
      ...offerRoutes,
      ...settingsRoutes,
      ...workRoutes,
      ...landingRoutes,
      ...splitRoutes,
      ...givingRoutes,
      ...handoverRoutes,
      ...yearOfMassRoutes,
      ...savingsRoutes,
      ...handingOverRoutes,
      ...closingRoutes,
      ...peopleRoutes,
      ...foodRoutes,
      ...containerKindRoutes,
      ...containerWishRoutes,
      ...holdRoutes,
      ...traceRoutes,
      ...treatmentRoutes,
      ...labelRoutes,
      ...wayToKeepRoutes,
    ]),
  ]),
  defaultPreload: 'intent',
  scrollRestoration: true,
});

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}
