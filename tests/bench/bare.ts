import { createHash } from 'node:crypto';
import { Hono } from 'hono';
import { getCookie } from 'hono/cookie';
import type { ParameterOrJSON, Sql } from 'postgres';
import { exchange, type Statement } from './record.ts';
import type { Recording } from './recording.ts';

/**
 * What somebody would write by hand who wants nothing but speed: the session look-up, then the very statements of the
 * product, prepared, sent in one flight, with no tenancy and no rules around them.
 */
export function bareHandlers({ sql, pages, payments }: { readonly sql: Sql } & Recording) {
  const isSignedIn = async (token = ''): Promise<boolean> => {
    const hash = createHash('sha256').update(token).digest('hex');
    const [session] = await sql`select * from door.find_session(${hash})`;
    return session !== undefined && new Date(session.expires_at) > new Date();
  };
  return new Hono()
    .get('/bare/pages/:page', async (c) => {
      if (!(await isSignedIn(getCookie(c, 'sheafbook')))) return c.text('', 401);
      const statements = pages.get(c.req.param('page'));
      if (!statements) return c.text('', 404);
      return c.json(await sendInOneFlight(sql, statements));
    })
    .post('/bare/payments', async (c) => {
      if (!(await isSignedIn(getCookie(c, 'sheafbook')))) return c.text('', 401);
      const text = await c.req.text();
      const payment = payments.get(JSON.parse(text).householdId);
      if (!payment) return c.text('', 404);
      const values = [
        [payment.key, c.req.header('idempotency-key') ?? ''],
        [String(payment.minorUnits), String(JSON.parse(text).minorUnits)],
        [payment.requestHash, createHash('sha256').update(text).digest('hex')],
      ] as const;
      const statements = payment.statements.map((statement) => exchange(statement, values));
      return c.json(await sendInOneFlight(sql, statements, { isTransaction: true }), 201);
    });
}

async function sendInOneFlight(
  sql: Sql,
  statements: readonly Statement[],
  { isTransaction = false } = {},
): Promise<unknown> {
  const [only] = statements;
  if (only && statements.length === 1 && !isTransaction) return send(sql, only);
  const connection = await sql.reserve();
  try {
    const flight = [
      ...(isTransaction ? [connection`begin`.execute()] : []),
      ...statements.map((statement) => send(connection, statement)),
      ...(isTransaction ? [connection`commit`.execute()] : []),
    ];
    const failed = (await Promise.allSettled(flight)).find((one) => one.status === 'rejected');
    if (failed) throw failed.reason;
    return await Promise.all(flight);
  } finally {
    connection.release();
  }
}

/** The app's own prepared text, as recorded; nothing of it comes from a request. */
const send = (sql: Pick<Sql, 'unsafe'>, { text, parameters }: Statement) =>
  sql.unsafe(text, [...parameters] as ParameterOrJSON<never>[], { prepare: true }).execute();
