import { Hono, type Context as HonoContext } from 'hono';
import { z } from 'zod';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, jsonBody } from '../../platform/http.ts';
import { presentWishes } from './present.ts';
import { lostPage, stopPage } from './present-stop.ts';
import { wishesEdit } from './schema.ts';
import { editWishes, readWishes } from './use-cases.ts';
import { lookAtStopLink, type StopPage, stopByLink } from './use-cases-stop.ts';

const TAG = 'Notices';

export const reminderRoutes = new Hono<AppEnv>()
  .get('/telling-wishes', describe(TAG, 'How and of what I am told by e-mail'), async (c) =>
    c.json(presentWishes(await readWishes(contextOf(c)), c.var.outside)),
  )
  .put(
    '/telling-wishes',
    describe(TAG, 'Choose language, hours, a daily letter, and which kinds to be told', ['stale-version']),
    jsonBody(wishesEdit),
    async (c) => c.json(presentWishes(await editWishes(contextOf(c), c.req.valid('json')), c.var.outside)),
  );

/** For whoever holds a letter, signed in or not: a page outside the storehouse's door. RFC 8058 posts to it in one click. */
export const stopRoutes = new Hono<AppEnv>()
  .get('/stop/:storehouse/:token', (c) => answerPage(c, lookAtStopLink))
  .post('/stop/:storehouse/:token', (c) => answerPage(c, stopByLink));

async function answerPage(c: HonoContext<AppEnv>, use: typeof stopByLink) {
  const found = await findPage(c, use);
  c.header('Cache-Control', 'no-store');
  c.header('Referrer-Policy', 'no-referrer'); // the address is the secret
  if (found) return c.html(stopPage(found));
  return c.html(lostPage(/^\s*es\b/i.test(c.req.header('Accept-Language') ?? '') ? 'es' : 'en'), 404);
}

async function findPage(c: HonoContext<AppEnv>, use: typeof stopByLink): Promise<StopPage | undefined> {
  const storehouseId = z.uuid().safeParse(c.req.param('storehouse'));
  if (!storehouseId.success) return undefined;
  return use(c.var.outside, { storehouseId: storehouseId.data, token: c.req.param('token') ?? '' });
}
