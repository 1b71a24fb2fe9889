import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const bank = createRoute({
  getParentRoute: () => houseRoute,
  path: '/books/bank',
  component: lazyRouteComponent(() => import('./bank.tsx'), 'Bank'),
});
const file = createRoute({
  getParentRoute: () => houseRoute,
  path: '/books/bank/file',
  component: lazyRouteComponent(() => import('./file.tsx'), 'BankFile'),
});

export const bankRoutes = [bank, file] as const;
