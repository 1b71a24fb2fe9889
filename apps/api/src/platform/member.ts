import type { Tx } from '@sheafbook/db';
import { dutyGrants, helperGrants, households, persons, storehouses } from '@sheafbook/db/tables';
import { and, eq, gt, isNull } from 'drizzle-orm';
import { getCookie, setCookie } from 'hono/cookie';
import { createMiddleware } from 'hono/factory';
import { z } from 'zod';
import type { Actor, Duty } from './actor.ts';
import type { AppEnv } from './app-env.ts';
import type { Config } from './config.ts';
import { Problem } from './problem.ts';
import { openSessions } from './session.ts';
import { enterStorehouse, withLoginTx } from './with-tx.ts';

/** `__Host-` binds the cookie to this host over TLS; a hall without a certificate gets a plain HttpOnly one. */
export const sessionCookie = (config: Config) => (config.isSecure ? '__Host-sheafbook' : 'sheafbook');

export const cookieOptions = (config: Config, expires: Date) =>
  ({ path: '/', httpOnly: true, sameSite: 'Lax', secure: config.isSecure, expires }) as const;

/** First check of all: who is it? A session that this request prolonged sets its cookie again. */
export const signedIn = createMiddleware<AppEnv>(async (c, next) => {
  const { config, outside } = c.var;
  const token = getCookie(c, sessionCookie(config));
  const session = token ? await openSessions(outside).find(token) : undefined;
  if (!token || !session) throw new Problem('not-signed-in');
  if (session.isFresh) setCookie(c, sessionCookie(config), token, cookieOptions(config, session.expiresAt));
  c.set('session', session);
  await next();
});

/** The household that a helper acts for in this request. */
const FOR_HOUSEHOLD = 'Sheafbook-For-Household';

/** Second check: a member of this storehouse? Another storehouse is "not found", never "forbidden". */
export const memberOnly = createMiddleware<AppEnv>(async (c, next) => {
  const { outside, session } = c.var;
  const storehouseId = z.uuid().safeParse(c.req.param('storehouse'));
  if (!storehouseId.success) throw new Problem('storehouse-not-found');
  const actor = await withLoginTx(outside, session.loginId, async (tx) => {
    await enterStorehouse(tx, storehouseId.data, session.loginId);
    const own = await findActor(tx, storehouseId.data, session.loginId);
    const householdId = c.req.header(FOR_HOUSEHOLD);
    return own && householdId ? actFor(tx, own, householdId, outside.now()) : own;
  });
  if (!actor) throw new Problem('storehouse-not-found');
  c.set('actor', actor);
  await next();
});

async function findActor(tx: Tx, storehouseId: string, loginId: string): Promise<Actor | undefined> {
  const [row] = await tx
    .select({
      personId: persons.personId,
      householdId: persons.householdId,
      householdLeftOn: households.leftOn,
      currency: storehouses.currency,
      timeZone: storehouses.timeZone,
    })
    .from(persons)
    .innerJoin(storehouses, eq(storehouses.storehouseId, persons.storehouseId))
    .leftJoin(
      households,
      and(eq(households.storehouseId, persons.storehouseId), eq(households.householdId, persons.householdId)),
    )
    .where(and(eq(persons.storehouseId, storehouseId), eq(persons.loginId, loginId), isNull(persons.leftOn)));
  if (!row) return undefined;
  const duties = await tx
    .select({ duty: dutyGrants.duty })
    .from(dutyGrants)
    .where(
      and(
        eq(dutyGrants.storehouseId, storehouseId),
        eq(dutyGrants.personId, row.personId),
        isNull(dutyGrants.endedAt),
      ),
    );
  const { personId, currency, timeZone } = row;
  const householdId = row.householdLeftOn ? null : row.householdId;
  return {
    loginId,
    personId,
    storehouseId,
    currency,
    timeZone,
    householdId,
    isHelping: false,
    duties: new Set(duties.map(({ duty }) => duty as Duty)),
  };
}

/** A helper acts with a grant in force only, and with no duty of its own while it does. */
async function actFor(tx: Tx, own: Actor, householdId: string, now: Date): Promise<Actor> {
  if (householdId === own.householdId) return own;
  if (!z.uuid().safeParse(householdId).success) throw new Problem('helper-grant-missing');
  const [grant] = await tx
    .select({ id: helperGrants.helperGrantId })
    .from(helperGrants)
    .where(
      and(
        eq(helperGrants.storehouseId, own.storehouseId),
        eq(helperGrants.personId, own.personId),
        eq(helperGrants.householdId, householdId),
        gt(helperGrants.expiresAt, now),
        isNull(helperGrants.endedAt),
      ),
    );
  if (!grant) throw new Problem('helper-grant-missing');
  return { ...own, householdId, isHelping: true, duties: new Set() };
}
