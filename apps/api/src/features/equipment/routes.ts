import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayKeepEquipment } from './policy.ts';
import { presentFacts, presentItem } from './present.ts';
import { equipmentQuery, itemEdit, itemWish, partsWish, unitEdit } from './schema.ts';
import { addItem, editItem, editUnit, findEquipment, listPartsAnew, readItem } from './use-cases.ts';

const TAG = 'Equipment';

export const equipmentRoutes = new Hono<AppEnv>()
  .get(
    '/equipment',
    describe(TAG, 'The group’s own things by name, each with its pieces as they stand'),
    queryOf(equipmentQuery),
    async (c) => {
      const query = c.req.valid('query');
      const { rows, next } = await findEquipment(contextOf(c), query);
      if (query.format === 'json') return c.json({ items: rows.map(presentItem), next });
      return answerCsv(
        c,
        'equipment',
        rows.map(({ item, states }) => ({ ...presentFacts(item), units: states.length })),
      );
    },
  )
  .post(
    '/equipment',
    describe(TAG, 'Add a thing that is lent', ['already-there']),
    may(mayKeepEquipment),
    jsonBody(itemWish),
    async (c) => c.json(presentItem(await addItem(contextOf(c), c.req.valid('json'))), 201),
  )
  .get('/equipment/:item', describe(TAG, 'One thing with its parts and pieces'), async (c) =>
    c.json(presentItem(await readItem(contextOf(c), idParam(c, 'item')))),
  )
  .put(
    '/equipment/:item',
    describe(TAG, 'Change what is lent on which terms', ['stale-version', 'already-there']),
    may(mayKeepEquipment),
    jsonBody(itemEdit),
    async (c) => c.json(presentItem(await editItem(contextOf(c), idParam(c, 'item'), c.req.valid('json')))),
  )
  .put(
    '/equipment/:item/parts',
    describe(TAG, 'List the parts anew'),
    may(mayKeepEquipment),
    jsonBody(partsWish),
    async (c) =>
      c.json(presentItem(await listPartsAnew(contextOf(c), idParam(c, 'item'), c.req.valid('json')))),
  )
  .put(
    '/equipment-units/:unit',
    describe(TAG, 'Say how a piece is and what it lacks', ['stale-version']),
    may(mayKeepEquipment),
    jsonBody(unitEdit),
    async (c) => c.json(presentItem(await editUnit(contextOf(c), idParam(c, 'unit'), c.req.valid('json')))),
  );
