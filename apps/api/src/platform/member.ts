import type { Tx } from '@sheafbook/db';
import { helperGrants } from '@sheafbook/db/tables';
import { and, eq, gt, isNull } from 'drizzle-orm';
import { getCookie, setCookie } from 'hono/cookie';
import { createMiddleware } from 'hono/factory';
import { z } from 'zod';
import type { Actor } from './actor.ts';
import type { AppEnv } from './app-env.ts';
import type { Config } from './config.ts';
import type { Outside } from './context.ts';
import { Problem } from './problem.ts';
import { openSessions, type SessionWithin } from './session.ts';
import { withTx } from './with-tx.ts';

/** `__Host-` binds the cookie to this host over TLS; a hall without a certificate gets a plain HttpOnly one. */
export const sessionCookie = (config: Config) => (config.isSecure ? '__Host-sheafbook' : 'sheafbook');

export const cookieOptions = (config: Config, expires: Date) =>
  ({ path: '/', httpOnly: true, sameSite: 'Lax', secure: config.isSecure, expires }) as const;

/**
 * First check of all: who is it? A session that this request prolonged sets its cookie again. Inside a storehouse the
 * same look says what the login is there, since every request wants to know both.
 */
export const signedIn = createMiddleware<AppEnv>(async (c, next) => {
  const { config } = c.var;
  const token = getCookie(c, sessionCookie(config));
  const found = token ? await findSession(c.var.outside, token, c.req.param('storehouse')) : undefined;
  if (!token || !found) throw new Problem('not-signed-in');
  const { session, actor } = found;
  if (session.isFresh) setCookie(c, sessionCookie(config), token, cookieOptions(config, session.expiresAt));
  c.set('session', session);
  c.set('found', actor);
  await next();
});

async function findSession(
  outside: Outside,
  token: string,
  storehouse: string | undefined,
): Promise<SessionWithin | undefined> {
  const sessions = openSessions(outside);
  const storehouseId = z.uuid().safeParse(storehouse);
  if (storehouseId.success) return sessions.findWithin(token, storehouseId.data);
  const session = await sessions.find(token);
  return session && { session, actor: undefined };
}

/** The household that a helper acts for in this request. */
const FOR_HOUSEHOLD = 'Sheafbook-For-Household';

/** Second check: a member of this storehouse? Another storehouse is "not found", never "forbidden". */
export const memberOnly = createMiddleware<AppEnv>(async (c, next) => {
  const own = c.var.found;
  if (!own) throw new Problem('storehouse-not-found');
  const householdId = c.req.header(FOR_HOUSEHOLD);
  c.set('actor', householdId ? await actFor(c.var.outside, own, householdId) : own);
  await next();
});

/** A helper acts with a grant in force only, and with no duty of its own while it does. */
async function actFor(outside: Outside, own: Actor, householdId: string): Promise<Actor> {
  if (householdId === own.householdId) return own;
  if (!z.uuid().safeParse(householdId).success) throw new Problem('helper-grant-missing');
  const mayAct = await withTx({ ...outside, actor: own }, (tx) =>
    hasGrant(tx, own, { householdId, now: outside.now() }),
  );
  if (!mayAct) throw new Problem('helper-grant-missing');
  return { ...own, householdId, isHelping: true, duties: new Set() };
}

async function hasGrant(tx: Tx, own: Actor, of: { householdId: string; now: Date }): Promise<boolean> {
  const [grant] = await tx
    .select({ id: helperGrants.helperGrantId })
    .from(helperGrants)
    .where(
      and(
        eq(helperGrants.storehouseId, own.storehouseId),
        eq(helperGrants.personId, own.personId),
        eq(helperGrants.householdId, of.householdId),
        gt(helperGrants.expiresAt, of.now),
        isNull(helperGrants.endedAt),
      ),
    );
  return grant !== undefined;
}
