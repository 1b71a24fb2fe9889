import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, may, queryOf } from '../../platform/http.ts';
import { mayReadSomeYear } from './policy.ts';
import { presentYearOfMass, presentYearsMovements } from './present.ts';
import { massMovementsQuery, massQuery } from './schema.ts';
import { readYearOfMass, readYearsMovements } from './use-cases.ts';

const reads = may(mayReadSomeYear, 'household-needed');

export const yearOfMassRoutes = new Hono<AppEnv>()
  .get(
    '/year-of-mass',
    describe('Keeping', 'A year of my household’s food or of the store’s: came, eaten, given, lost, left', [
      'duty-missing',
    ]),
    reads,
    queryOf(massQuery),
    async (c) => c.json(presentYearOfMass(await readYearOfMass(contextOf(c), c.req.valid('query')))),
  )
  .get(
    '/year-of-mass/movements',
    describe('Keeping', 'The movements behind one number of a year of food', ['duty-missing']),
    reads,
    queryOf(massMovementsQuery),
    async (c) => c.json(presentYearsMovements(await readYearsMovements(contextOf(c), c.req.valid('query')))),
  );
