import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { serveStatic } from '@hono/node-server/serve-static';
import { Hono } from 'hono';
import type { AppEnv } from './app-env.ts';

/** The web's own files, from wherever the server was started: the built app, or the door plate where none is built. */
const built = fileURLToPath(new URL('../../../web/dist', import.meta.url));
const plate = fileURLToPath(new URL('../../../web/public', import.meta.url));

/** Asked with each request, since a build may come after the start. */
const isBuilt = () => existsSync(`${built}/index.html`);

const fromBuild = serveStatic<AppEnv>({
  root: built,
  precompressed: true,
  // A file of the build carries its own print in its name, so it never changes; the page that names them may.
  onFound: (path, c) =>
    c.header('Cache-Control', path.includes('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache'),
});
const fromPlate = serveStatic<AppEnv>({ root: plate });

export const webRoutes = new Hono<AppEnv>()
  .get('/*', (c, next) => (isBuilt() ? fromBuild : fromPlate)(c, next))
  .get('/*', async (c, next) => {
    // Any other address that a browser opens is a page of the app, which finds its way by itself.
    const isPage = c.req.header('Accept')?.includes('text/html') && !/^\/(api|assets)(\/|$)/.test(c.req.path);
    if (!isPage || !isBuilt()) return next();
    c.header('Cache-Control', 'no-cache');
    return c.html(await readFile(`${built}/index.html`, 'utf8'));
  });
