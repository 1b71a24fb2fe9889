import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const foods = createRoute({
  getParentRoute: () => houseRoute,
  path: '/foods',
  component: lazyRouteComponent(() => import('./foods.tsx'), 'Foods'),
});
const added = createRoute({
  getParentRoute: () => houseRoute,
  path: '/foods/new',
  component: lazyRouteComponent(() => import('./new-food.tsx'), 'NewFood'),
});
const food = createRoute({
  getParentRoute: () => houseRoute,
  path: '/foods/$food',
  component: lazyRouteComponent(() => import('./food-sheet.tsx'), 'FoodSheet'),
});

export const foodRoutes = [foods, added, food] as const;
