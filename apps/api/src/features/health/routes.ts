import { sql } from 'drizzle-orm';
import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { describe } from '../../platform/http.ts';
import { Problem } from '../../platform/problem.ts';

export const healthRoutes = new Hono<AppEnv>()
  .get('/health', describe('Health', 'The process runs'), (c) => c.json({ status: 'alive' as const }))
  .get('/readiness', describe('Health', 'The database answers', ['not-ready']), async (c) => {
    await c.var.outside.db.execute(sql`select 1`).catch((cause: unknown) => {
      throw new Problem('not-ready', { cause });
    });
    return c.json({ status: 'ready' as const });
  });
