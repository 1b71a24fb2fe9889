import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

// One part of the program for all of them: whoever opened the first needs no signal for the others.
const pages = () => import('./pages.ts');

const landing = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy/landing',
  component: lazyRouteComponent(pages, 'LandingPage'),
});
const size = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy/landing/$size',
  component: lazyRouteComponent(pages, 'BagByBag'),
});
const bag = createRoute({
  getParentRoute: () => houseRoute,
  path: '/buys/$buy/landing/bags/$bag',
  component: lazyRouteComponent(pages, 'BagSheet'),
});

export const landingRoutes = [landing, size, bag] as const;
