import { Hono, type Context as HonoContext } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import { z } from 'zod';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { cookieOptions, sessionCookie } from '../../platform/member.ts';
import { pageOf, pageQuery } from '../../platform/paging.ts';
import { Problem } from '../../platform/problem.ts';
import { remoteAddress } from '../../platform/remote-address.ts';
import { openSessions } from '../../platform/session.ts';
import { mayInvite } from './policy.ts';
import { presentInvitation, presentLook, presentNewInvitation } from './present.ts';
import { acceptance, invitationWish } from './schema.ts';
import {
  acceptInvitation,
  type Bearer,
  invite,
  lookAtInvitation,
  readInvitations,
  withdrawInvitation,
} from './use-cases.ts';

const TAG = 'Joining and leaving';

export const invitationRoutes = new Hono<AppEnv>()
  .post(
    '/invitations',
    describe(TAG, 'Make a link for one person; its token is shown this once', ['household-has-left']),
    may(mayInvite),
    jsonBody(invitationWish),
    async (c) => {
      const made = await invite(contextOf(c), c.req.valid('json'));
      return c.json(presentNewInvitation(made, c.var.config.publicUrl), 201);
    },
  )
  .get(
    '/invitations',
    describe(TAG, 'The links that were made, newest first'),
    may(mayInvite),
    queryOf(pageQuery.extend({ after: z.uuid().optional() })),
    async (c) => {
      const query = c.req.valid('query');
      const found = await readInvitations(contextOf(c), query);
      const { rows, next } = pageOf(found, query.limit, (row) => row.invitation.invitationId);
      const invitations = rows.map((row) => presentInvitation(row, c.var.outside.now()));
      return query.format === 'csv'
        ? answerCsv(c, 'invitations', invitations)
        : c.json({ invitations, next });
    },
  )
  .delete(
    '/invitations/:invitation',
    describe(TAG, 'Withdraw a link that nobody used', ['thing-not-found', 'invitation-not-valid']),
    may(mayInvite),
    async (c) => {
      await withdrawInvitation(contextOf(c), idParam(c, 'invitation'));
      return c.body(null, 204);
    },
  );

/** For whoever holds a link, with or without a login; these two stand outside the storehouse's door. */
export const joiningRoutes = new Hono<AppEnv>()
  .get(
    '/invitations/:storehouse/:token',
    describe(TAG, 'Look at a link before joining', ['invitation-not-valid', 'too-many-attempts']),
    async (c) => c.json(presentLook(await lookAtInvitation(c.var.outside, bearerOf(c)))),
  )
  .post(
    '/invitations/:storehouse/:token',
    describe(TAG, 'Join with a new login, or with the one that is signed in', [
      'invitation-not-valid',
      'too-many-attempts',
      'email-taken',
      'already-a-member',
      'already-there',
    ]),
    jsonBody(acceptance),
    async (c) => {
      const wish = c.req.valid('json');
      const loginId = wish.login ? null : await signedInLogin(c);
      const joined = await acceptInvitation(c.var.outside, bearerOf(c), { ...wish, loginId });
      if (joined.isNewLogin) await beginSession(c, joined.loginId);
      const { storehouseId, householdId, personId } = joined;
      return c.json({ storehouseId, householdId, personId }, 201);
    },
  );

function bearerOf(c: HonoContext<AppEnv>): Bearer {
  const storehouseId = z.uuid().safeParse(c.req.param('storehouse'));
  if (!storehouseId.success) throw new Problem('invitation-not-valid');
  return { storehouseId: storehouseId.data, token: c.req.param('token') ?? '', from: remoteAddress(c) };
}

async function signedInLogin(c: HonoContext<AppEnv>): Promise<string> {
  const token = getCookie(c, sessionCookie(c.var.config));
  const session = token ? await openSessions(c.var.outside).find(token) : undefined;
  if (!session) throw new Problem('not-signed-in');
  return session.loginId;
}

async function beginSession(c: HonoContext<AppEnv>, loginId: string): Promise<void> {
  const { config, outside } = c.var;
  const { token, expiresAt } = await openSessions(outside).begin(loginId);
  setCookie(c, sessionCookie(config), token, cookieOptions(config, expiresAt));
}
