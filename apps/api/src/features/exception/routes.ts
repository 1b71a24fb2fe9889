import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, may, queryOf } from '../../platform/http.ts';
import { mayReadExceptions } from './policy.ts';
import { exceptionRows, presentExceptions } from './present.ts';
import { exceptionsQuery } from './schema.ts';
import { readExceptions } from './use-cases.ts';

export const exceptionRoutes = new Hono<AppEnv>().get(
  '/exceptions',
  describe('Books', 'What was taken back and what was decided against the rule, each with its reason'),
  may(mayReadExceptions),
  queryOf(exceptionsQuery),
  async (c) => {
    const { format, ...days } = c.req.valid('query');
    const found = await readExceptions(contextOf(c), days);
    return format === 'csv'
      ? answerCsv(c, 'exceptions', exceptionRows(found))
      : c.json(presentExceptions(found));
  },
);
