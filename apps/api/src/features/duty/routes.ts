import { Hono } from 'hono';
import { z } from 'zod';
import type { Duty } from '../../platform/actor.ts';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { pageOf, pageQuery } from '../../platform/paging.ts';
import { Problem } from '../../platform/problem.ts';
import { mayGiveDuties } from './policy.ts';
import { presentDutyGrant } from './present.ts';
import { dutyName, dutyWish, plannedEndWish } from './schema.ts';
import { endDuty, grantDuty, planEndOfDuty, readDutyGrants } from './use-cases.ts';

const TAG = 'People';

function dutyParam(name: string): Duty {
  const duty = dutyName.safeParse(name);
  if (!duty.success) throw new Problem('thing-not-found', { thing: 'duty' });
  return duty.data;
}

export const dutyRoutes = new Hono<AppEnv>()
  .get(
    '/duties',
    describe(TAG, 'Who held which duty, and when, newest first'),
    queryOf(pageQuery.extend({ after: z.uuid().optional() })),
    async (c) => {
      const query = c.req.valid('query');
      const found = await readDutyGrants(contextOf(c), query);
      const { rows, next } = pageOf(found, query.limit, (row) => row.grant.dutyGrantId);
      const duties = rows.map((row) => presentDutyGrant(row.grant, row.personName));
      return query.format === 'csv' ? answerCsv(c, 'duties', duties) : c.json({ duties, next });
    },
  )
  .post(
    '/persons/:person/duties',
    describe(TAG, 'Give a duty', ['thing-not-found', 'already-there', 'duties-not-separate']),
    may(mayGiveDuties),
    jsonBody(dutyWish),
    async (c) => {
      const { duty } = c.req.valid('json');
      const { grant, person } = await grantDuty(contextOf(c), idParam(c, 'person'), duty);
      return c.json(presentDutyGrant(grant, person.name), 201);
    },
  )
  .put(
    '/persons/:person/duties/:duty/planned-end',
    describe(TAG, 'Say on which day a duty is meant to end, or that it is not', ['thing-not-found']),
    may(mayGiveDuties),
    jsonBody(plannedEndWish),
    async (c) => {
      const wish = { duty: dutyParam(c.req.param('duty')), ...c.req.valid('json') };
      const { grant, person } = await planEndOfDuty(contextOf(c), idParam(c, 'person'), wish);
      return c.json(presentDutyGrant(grant, person.name));
    },
  )
  .delete(
    '/persons/:person/duties/:duty',
    describe(TAG, 'End a duty; its dates are kept', ['thing-not-found', 'last-of-duty']),
    may(mayGiveDuties),
    async (c) => {
      const duty = dutyParam(c.req.param('duty'));
      const { grant, person } = await endDuty(contextOf(c), idParam(c, 'person'), duty);
      return c.json(presentDutyGrant(grant, person.name));
    },
  );
