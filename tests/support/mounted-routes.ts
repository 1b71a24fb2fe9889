import type { TestApp } from './app.ts';

/** The address that everything inside one storehouse begins with. */
export const INSIDE = '/api/storehouses/:storehouse';

/** Every route that the application answers, as "GET /api/health"; the files of the web and the guards are left out. */
export function mountedRoutes({ app }: Pick<TestApp, 'app'>): string[] {
  const routes = app.routes
    .filter(({ method, path }) => method !== 'ALL' && !path.includes('*'))
    .map(({ method, path }) => `${method} ${path}`);
  return [...new Set(routes)].toSorted();
}

/** Those inside a storehouse, without what they all begin with: "GET /buys/:buy"; the storehouse itself is "GET /". */
export function routesInside(app: Pick<TestApp, 'app'>): string[] {
  return mountedRoutes(app)
    .map((route) => route.split(' '))
    .filter(([, path = '']) => path === INSIDE || path.startsWith(`${INSIDE}/`))
    .map(([method, path = '']) => `${method} ${path.slice(INSIDE.length) || '/'}`);
}

/** The parts of a route's name. `rest` is its address inside the storehouse, with these ids put in. */
export function addressOf(route: string, ids: Readonly<Record<string, string>>) {
  const [method = '', pattern = ''] = route.split(' ');
  const rest = pattern.replaceAll(/:(\w+)/g, (_, name: string) => {
    const id = ids[name];
    if (id === undefined) throw new Error(`no id for :${name} of ${route}`);
    return id;
  });
  return { method, rest: rest === '/' ? '' : rest };
}

/** The names of the ids in a route's address, in their order. */
export const idsIn = (route: string): string[] =>
  [...route.matchAll(/:(\w+)/g)].flatMap(([, name]) => (name === undefined ? [] : [name]));
