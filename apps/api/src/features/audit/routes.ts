import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, may } from '../../platform/http.ts';
import { mayAudit } from './policy.ts';
import { presentAudit } from './present.ts';
import { audit } from './use-cases.ts';

export const auditRoutes = new Hono<AppEnv>().get(
  '/audit',
  describe('Books', 'Recompute the book from its movements and test every invariant, each with its figure'),
  may(mayAudit),
  async (c) => c.json(presentAudit(await audit(contextOf(c)))),
);
