import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayEditContact } from './policy.ts';
import { presentContact } from './present.ts';
import { contactEdit, contactQuery } from './schema.ts';
import { editContact, readContact } from './use-cases.ts';

const TAG = 'People';

export const contactRoutes = new Hono<AppEnv>()
  .get(
    '/households/:household/contact',
    describe(TAG, 'Telephone and address: one’s own, or for a purpose that the household will see', [
      'thing-not-found',
      'not-your-household',
    ]),
    queryOf(contactQuery),
    async (c) => {
      const householdId = idParam(c, 'household');
      const contact = await readContact(contextOf(c), householdId, c.req.valid('query').purpose);
      return c.json(presentContact(householdId, contact));
    },
  )
  .put(
    '/households/:household/contact',
    describe(TAG, 'Change one’s own telephone and address, and who sees them', [
      'thing-not-found',
      'not-your-household',
      'stale-version',
    ]),
    may(mayEditContact, 'household-needed'),
    jsonBody(contactEdit),
    async (c) => {
      const householdId = idParam(c, 'household');
      const contact = await editContact(contextOf(c), householdId, c.req.valid('json'));
      return c.json(presentContact(householdId, contact));
    },
  );
