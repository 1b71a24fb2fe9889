import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, jsonBody } from '../../platform/http.ts';
import { presentWishes } from './present.ts';
import { wishesEdit } from './schema.ts';
import { editWishes, readWishes } from './use-cases.ts';

const TAG = 'Notices';

export const reminderRoutes = new Hono<AppEnv>()
  .get('/telling-wishes', describe(TAG, 'How and of what I am told by e-mail'), async (c) =>
    c.json(presentWishes(await readWishes(contextOf(c)))),
  )
  .put(
    '/telling-wishes',
    describe(TAG, 'Choose language, hours, a daily letter, and which kinds to be told', ['stale-version']),
    jsonBody(wishesEdit),
    async (c) => c.json(presentWishes(await editWishes(contextOf(c), c.req.valid('json')))),
  );
