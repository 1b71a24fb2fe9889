import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayKeepPantries } from './policy.ts';
import { presentPantries, presentPantryWithCards } from './present.ts';
import { newCard, newPantry, pantryEdit } from './schema.ts';
import { addPantry, editPantry, readPantries, readPantry, renewCard } from './use-cases.ts';

const TAG = 'Keeping';
const keeps = may(mayKeepPantries);

export const pantryRoutes = new Hono<AppEnv>()
  .get('/pantries', describe(TAG, 'Pantries and what each takes'), async (c) =>
    c.json(presentPantries(await readPantries(contextOf(c)))),
  )
  .post(
    '/pantries',
    describe(TAG, 'Add a pantry with its card', ['already-there', 'card-accepts-nothing']),
    keeps,
    jsonBody(newPantry),
    async (c) => c.json(presentPantryWithCards(await addPantry(contextOf(c), c.req.valid('json'))), 201),
  )
  .get('/pantries/:pantry', describe(TAG, 'A pantry with every card that it had'), async (c) =>
    c.json(presentPantryWithCards(await readPantry(contextOf(c), idParam(c, 'pantry')))),
  )
  .put(
    '/pantries/:pantry',
    describe(TAG, 'Change a pantry’s name, door and contact', ['already-there', 'stale-version']),
    keeps,
    jsonBody(pantryEdit),
    async (c) =>
      c.json(
        presentPantryWithCards(await editPantry(contextOf(c), idParam(c, 'pantry'), c.req.valid('json'))),
      ),
  )
  .put(
    '/pantries/:pantry/card',
    describe(TAG, 'Write a newer card for a pantry', ['stale-version', 'card-accepts-nothing']),
    keeps,
    jsonBody(newCard),
    async (c) =>
      c.json(
        presentPantryWithCards(await renewCard(contextOf(c), idParam(c, 'pantry'), c.req.valid('json'))),
      ),
  );
