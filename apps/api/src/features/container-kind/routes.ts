import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayEditContainerKinds } from './policy.ts';
import { presentContainerKind, presentContainerKinds } from './present.ts';
import { containerKindEdit, containerKindQuery, containerKindWish } from './schema.ts';
import { addContainerKind, editContainerKind, findContainerKinds } from './use-cases.ts';

export const containerKindRoutes = new Hono<AppEnv>()
  .get(
    '/container-kinds',
    describe('Container kinds', 'Container kinds by code, with true capacity and what they keep out'),
    queryOf(containerKindQuery),
    async (c) => {
      const query = c.req.valid('query');
      const page = await findContainerKinds(contextOf(c), query);
      if (query.format === 'csv') return answerCsv(c, 'container-kinds', page.rows.map(presentContainerKind));
      return c.json(presentContainerKinds(page));
    },
  )
  .post(
    '/container-kinds',
    describe('Container kinds', 'Add a container kind of the group’s own', ['already-there']),
    may(mayEditContainerKinds),
    jsonBody(containerKindWish),
    async (c) => c.json(presentContainerKind(await addContainerKind(contextOf(c), c.req.valid('json'))), 201),
  )
  .put(
    '/container-kinds/:kind',
    describe('Container kinds', 'Set the tare and the price of a kind, and of an own kind what it does', [
      ...(['thing-not-found', 'stale-version', 'kind-is-published'] as const),
    ]),
    may(mayEditContainerKinds),
    jsonBody(containerKindEdit),
    async (c) => {
      const kind = await editContainerKind(contextOf(c), idParam(c, 'kind'), c.req.valid('json'));
      return c.json(presentContainerKind(kind));
    },
  );
