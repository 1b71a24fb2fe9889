import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { houseRoute } from '../../house-route.ts';

const notices = createRoute({
  getParentRoute: () => houseRoute,
  path: '/notices',
  component: lazyRouteComponent(() => import('./notices.tsx'), 'Notices'),
});
const written = createRoute({
  getParentRoute: () => houseRoute,
  path: '/notices/written',
  component: lazyRouteComponent(() => import('./written.tsx'), 'Written'),
});

const wishes = createRoute({
  getParentRoute: () => houseRoute,
  path: '/notices/wishes',
  component: lazyRouteComponent(() => import('./wishes.tsx'), 'Wishes'),
});

export const noticeRoutes = [notices, written, wishes] as const;
