import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayEditFoods } from './policy.ts';
import { presentFood, presentFoodCells, presentFoods } from './present.ts';
import { foodEdit, foodQuery, foodRetirement, foodWish } from './schema.ts';
import { addFood, editFood, findFoods, readFood, retireFood } from './use-cases.ts';

export const foodRoutes = new Hono<AppEnv>()
  .get(
    '/foods',
    describe('Foods', 'Foods by code: published ones and the group’s own'),
    queryOf(foodQuery),
    async (c) => {
      const query = c.req.valid('query');
      const page = await findFoods(contextOf(c), query);
      if (query.format === 'csv') return answerCsv(c, 'foods', page.rows.map(presentFoodCells));
      return c.json(presentFoods(page));
    },
  )
  .post(
    '/foods',
    describe('Foods', 'Add a food of the group’s own', ['already-there']),
    may(mayEditFoods),
    jsonBody(foodWish),
    async (c) => c.json(presentFood(await addFood(contextOf(c), c.req.valid('json'))), 201),
  )
  .get('/foods/:food', describe('Foods', 'One food with its source', ['thing-not-found']), async (c) =>
    c.json(presentFood(await readFood(contextOf(c), idParam(c, 'food')))),
  )
  .put(
    '/foods/:food',
    describe('Foods', 'Change a food of the group’s own', ['food-is-published', 'stale-version']),
    may(mayEditFoods),
    jsonBody(foodEdit),
    async (c) => c.json(presentFood(await editFood(contextOf(c), idParam(c, 'food'), c.req.valid('json')))),
  )
  .put(
    '/foods/:food/retirement',
    describe('Foods', 'Take a food off the lists, or put it back', ['in-use', 'stale-version']),
    may(mayEditFoods),
    jsonBody(foodRetirement),
    async (c) => c.json(presentFood(await retireFood(contextOf(c), idParam(c, 'food'), c.req.valid('json')))),
  );
