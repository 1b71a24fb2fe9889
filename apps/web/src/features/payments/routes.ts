import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const getParentRoute = () => houseRoute;

const payments = createRoute({
  getParentRoute,
  path: '/books/payments',
  component: lazyRouteComponent(() => import('./payments.tsx'), 'Payments'),
});
const suppliers = createRoute({
  getParentRoute,
  path: '/books/suppliers',
  component: lazyRouteComponent(() => import('./suppliers.tsx'), 'Suppliers'),
});

export const paymentsRoutes = [payments, suppliers] as const;
