import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const buys = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys',
  component: lazyRouteComponent(() => import('./buys.tsx'), 'Buys'),
});
const buy = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy',
  component: lazyRouteComponent(() => import('./buy.tsx'), 'Buy'),
});
const line = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy/lines/$line',
  component: lazyRouteComponent(() => import('./line.tsx'), 'BuyLine'),
});

const run = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy/run',
  component: lazyRouteComponent(() => import('./run.tsx'), 'RunBuy'),
});
const planNew = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/new',
  component: lazyRouteComponent(() => import('./plan-new.tsx'), 'PlanBuy'),
});
const planEdit = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy/plan',
  component: lazyRouteComponent(() => import('./plan-edit.tsx'), 'EditPlan'),
});
const quotes = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy/quotes',
  component: lazyRouteComponent(() => import('./quotes.tsx'), 'Quotes'),
});
const fixing = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy/fixing',
  component: lazyRouteComponent(() => import('./fixing.tsx'), 'FixBuy'),
});
const order = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy/order',
  component: lazyRouteComponent(() => import('./order.tsx'), 'OrderBuy'),
});

export const buyRoutes = [buys, buy, line, run, planNew, planEdit, quotes, fixing, order] as const;
