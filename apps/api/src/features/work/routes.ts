import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, idParam, may } from '../../platform/http.ts';
import { mayTendWork } from './policy.ts';
import { presentMail, presentWork } from './present.ts';
import { readWork, retryWork } from './use-cases.ts';

const TAG = 'Work in the background';

export const workRoutes = new Hono<AppEnv>()
  .get(
    '/background-work',
    describe(TAG, 'What failed in the background and why, and whether e-mail is on'),
    may(mayTendWork),
    async (c) => {
      const { counts, troubled } = await readWork(contextOf(c));
      const mail = presentMail(c.var.config.mail?.from.address);
      return c.json({ ...counts, mail, works: troubled.map(presentWork) });
    },
  )
  .post(
    '/background-work/:work/retry',
    describe(TAG, 'Try dead work once more', ['thing-not-found', 'busy-retry']),
    may(mayTendWork),
    async (c) => {
      await retryWork(contextOf(c), idParam(c, 'work'));
      return c.body(null, 204);
    },
  );
