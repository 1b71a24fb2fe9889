import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const all = createRoute({
  getParentRoute: () => houseRoute,
  path: '/equipment',
  component: lazyRouteComponent(() => import('./equipment.tsx'), 'Equipment'),
});
const desk = createRoute({
  getParentRoute: () => houseRoute,
  path: '/equipment/desk',
  component: lazyRouteComponent(() => import('./desk.tsx'), 'EquipmentDesk'),
});
const use = createRoute({
  getParentRoute: () => houseRoute,
  path: '/equipment/use',
  component: lazyRouteComponent(() => import('./use-page.tsx'), 'UsePage'),
});
const add = createRoute({
  getParentRoute: () => houseRoute,
  path: '/equipment/new',
  component: lazyRouteComponent(() => import('./item-form.tsx'), 'NewItem'),
});
const one = createRoute({
  getParentRoute: () => houseRoute,
  path: '/equipment/$item',
  component: lazyRouteComponent(() => import('./item.tsx'), 'ItemPage'),
});
const change = createRoute({
  getParentRoute: () => houseRoute,
  path: '/equipment/$item/change',
  component: lazyRouteComponent(() => import('./item-form.tsx'), 'ChangeItem'),
});
const going = createRoute({
  getParentRoute: () => houseRoute,
  path: '/equipment/$item/bookings/$booking',
  component: lazyRouteComponent(() => import('./hand-out.tsx'), 'HandOut'),
});
const coming = createRoute({
  getParentRoute: () => houseRoute,
  path: '/equipment/$item/loans/$loan',
  component: lazyRouteComponent(() => import('./bring-back.tsx'), 'BringBack'),
});

export const equipmentRoutes = [all, desk, use, add, one, change, going, coming] as const;
