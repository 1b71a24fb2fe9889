import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, jsonBody, may } from '../../platform/http.ts';
import { mayChangeRules, mayEditStorehouse } from './policy.ts';
import { presentRules, presentStorehouse } from './present.ts';
import { rulesChange, storehouseEdit } from './schema.ts';
import { changeRules, editStorehouse, readStorehouse } from './use-cases.ts';

export const storehouseRoutes = new Hono<AppEnv>()
  .get('/', describe('Storehouse', 'The storehouse and its rules in force'), async (c) =>
    c.json(presentStorehouse(await readStorehouse(contextOf(c)))),
  )
  .put(
    '/',
    describe('Storehouse', 'Change name, time zone, mass display or language', ['stale-version']),
    may(mayEditStorehouse),
    jsonBody(storehouseEdit),
    async (c) => c.json(presentStorehouse(await editStorehouse(contextOf(c), c.req.valid('json')))),
  )
  .post(
    '/rules',
    describe('Storehouse', 'Put new rules in force; buys fixed before keep theirs', ['stale-version']),
    may(mayChangeRules),
    jsonBody(rulesChange),
    async (c) => c.json(presentRules(await changeRules(contextOf(c), c.req.valid('json'))), 201),
  );
