import { fileURLToPath } from 'node:url';
import { serveStatic } from '@hono/node-server/serve-static';
import { Hono } from 'hono';
import type { AppEnv } from './app-env.ts';

/** The web's own files, from wherever the server was started. */
const folder = fileURLToPath(new URL('../../../web/public', import.meta.url));

export const webRoutes = new Hono<AppEnv>().get('/*', serveStatic({ root: folder }));
