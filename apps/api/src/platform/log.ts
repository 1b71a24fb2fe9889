import { createMiddleware } from 'hono/factory';
import { matchedRoutes } from 'hono/route';
import pino, { type Logger } from 'pino';
import type { AppEnv } from './app-env.ts';
import { findPostgresError } from './to-problem.ts';

/** Structured logs on standard error, so that standard output stays a command's own answer. */
export const openLog = (level: string): Logger => pino({ level, base: null }, pino.destination(2));

/**
 * One line a request: method, route pattern, status and time. Never a path with its ids, a query, a body, a name or an
 * address: a log is read by people who may not see those.
 */
export const logRequests = createMiddleware<AppEnv>(async (c, next) => {
  const startedAt = performance.now();
  await next();
  const { requestId, log } = c.var;
  // The last pattern that is no middleware's; of the web's own files there is none.
  const route = matchedRoutes(c).findLast(({ path }) => !path.endsWith('*'))?.path ?? '/*';
  const milliseconds = Math.round(performance.now() - startedAt);
  log.info({ requestId, method: c.req.method, route, status: c.res.status, milliseconds });
});

/** Everything that mends a failure and nothing of what was in it: a query's message carries its parameters. */
export function logFailure(log: Logger, requestId: string, error: unknown): void {
  const refusal = findPostgresError(error);
  const stack =
    error instanceof Error ? (error.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line)) : [];
  log.error({
    requestId,
    failure: error instanceof Error ? error.name : typeof error,
    database: refusal && {
      code: refusal.code,
      constraint: refusal.constraint_name,
      message: refusal.message,
    },
    stack: stack.slice(0, 12),
  });
}
