import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const offers = createRoute({
  getParentRoute: () => houseRoute,
  path: '/offers',
  component: lazyRouteComponent(() => import('./offers.tsx'), 'Offers'),
});
const offer = createRoute({
  getParentRoute: () => houseRoute,
  path: '/offers/$offer',
  component: lazyRouteComponent(() => import('./offer.tsx'), 'OfferPage'),
});
const newOffer = createRoute({
  getParentRoute: () => houseRoute,
  path: '/shelf/$container/offer',
  component: lazyRouteComponent(() => import('./new-offer.tsx'), 'NewOffer'),
});

const storeOffers = createRoute({
  getParentRoute: () => houseRoute,
  path: '/giving/offers',
  component: lazyRouteComponent(() => import('./store-offers.tsx'), 'StoreOffers'),
});

export const offerRoutes = [offers, offer, newOffer, storeOffers] as const;
