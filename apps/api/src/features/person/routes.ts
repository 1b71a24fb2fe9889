import { Hono } from 'hono';
import { z } from 'zod';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, queryOf } from '../../platform/http.ts';
import { pageOf, pageQuery } from '../../platform/paging.ts';
import { presentPerson } from './present.ts';
import { readPersons } from './use-cases.ts';

export const personRoutes = new Hono<AppEnv>().get(
  '/persons',
  describe('People', 'Everyone in the storehouse, with household and duties'),
  queryOf(pageQuery.extend({ after: z.uuid().optional() })),
  async (c) => {
    const query = c.req.valid('query');
    const found = await readPersons(contextOf(c), query);
    const { rows, next } = pageOf(found, query.limit, (row) => row.person.personId);
    const persons = rows.map(presentPerson);
    return query.format === 'csv'
      ? answerCsv(
          c,
          'persons',
          persons.map((person) => ({ ...person, duties: person.duties.join(' ') })),
        )
      : c.json({ persons, next });
  },
);
