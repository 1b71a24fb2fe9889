import { Hono } from 'hono';
import { deleteCookie, setCookie } from 'hono/cookie';
import type { AppEnv } from '../../platform/app-env.ts';
import { describe, jsonBody } from '../../platform/http.ts';
import { cookieOptions, sessionCookie, signedIn } from '../../platform/member.ts';
import { remoteAddress } from '../../platform/remote-address.ts';
import { openSessions } from '../../platform/session.ts';
import { listMyStorehouses } from '../storehouse/use-cases.ts';
import { passwordChange, signIn as signInSchema } from './schema.ts';
import { changePassword, signIn } from './use-cases.ts';

export const sessionRoutes = new Hono<AppEnv>()
  .post(
    '/session',
    describe('Signing in', 'Sign in with e-mail and password', ['sign-in-failed', 'too-many-attempts']),
    jsonBody(signInSchema),
    async (c) => {
      const { config, outside } = c.var;
      const { token, expiresAt, name, email } = await signIn(outside, c.req.valid('json'), remoteAddress(c));
      setCookie(c, sessionCookie(config), token, cookieOptions(config, expiresAt));
      return c.json({ name, email, expiresAt: expiresAt.toISOString() }, 201);
    },
  )
  .get('/session', describe('Signing in', 'Who am I, and in which storehouses'), signedIn, async (c) => {
    const { outside, session } = c.var;
    const storehouses = await listMyStorehouses(outside, session.loginId);
    const { name, email, expiresAt } = session;
    return c.json({ name, email, expiresAt: expiresAt.toISOString(), storehouses });
  })
  .delete('/session', describe('Signing in', 'Sign out here'), signedIn, async (c) => {
    await openSessions(c.var.outside).end(c.var.session.sessionId);
    deleteCookie(c, sessionCookie(c.var.config), { path: '/', secure: c.var.config.isSecure });
    return c.body(null, 204);
  })
  .delete('/sessions', describe('Signing in', 'Sign out everywhere'), signedIn, async (c) => {
    await openSessions(c.var.outside).endAll(c.var.session.loginId);
    deleteCookie(c, sessionCookie(c.var.config), { path: '/', secure: c.var.config.isSecure });
    return c.body(null, 204);
  })
  .put(
    '/password',
    describe('Signing in', 'Change the password; every other session ends', ['sign-in-failed']),
    signedIn,
    jsonBody(passwordChange),
    async (c) => {
      const { config, outside, session } = c.var;
      const begun = await changePassword(outside, session, c.req.valid('json'));
      setCookie(c, sessionCookie(config), begun.token, cookieOptions(config, begun.expiresAt));
      return c.body(null, 204);
    },
  );
