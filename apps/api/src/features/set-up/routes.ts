import { Hono } from 'hono';
import { setCookie } from 'hono/cookie';
import type { AppEnv } from '../../platform/app-env.ts';
import { describe, jsonBody } from '../../platform/http.ts';
import { cookieOptions, sessionCookie } from '../../platform/member.ts';
import { setUp } from '../storehouse/schema.ts';
import { isSetUp, setUpServer } from '../storehouse/use-cases.ts';

export const setUpRoutes = new Hono<AppEnv>()
  .get('/set-up', describe('Signing in', 'Whether the first run is over'), async (c) =>
    c.json({ isSetUp: await isSetUp(c.var.outside) }, 200),
  )
  .post(
    '/set-up',
    describe('Signing in', 'First run: the first login, its storehouse and household', ['already-set-up']),
    jsonBody(setUp),
    async (c) => {
      const { config, outside } = c.var;
      const { token, expiresAt, storehouseId } = await setUpServer(outside, c.req.valid('json'));
      setCookie(c, sessionCookie(config), token, cookieOptions(config, expiresAt));
      return c.json({ storehouseId }, 201);
    },
  );
