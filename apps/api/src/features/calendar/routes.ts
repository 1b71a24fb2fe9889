import { Hono, type Context as HonoContext } from 'hono';
import { etag } from 'hono/etag';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, idParam, jsonBody, queryOf } from '../../platform/http.ts';
import { remoteAddress } from '../../platform/remote-address.ts';
import { presentAppointments, presentFeed, presentNewFeed } from './present.ts';
import { feedWish, fileQuery } from './schema.ts';
import {
  endFeed,
  makeFeed,
  readAppointmentFile,
  readAppointments,
  readFeed,
  readFeeds,
  renewFeed,
} from './use-cases.ts';

const TAG = 'Calendars';

export const calendarRoutes = new Hono<AppEnv>()
  .get(
    '/appointments',
    describe(TAG, 'What my calendar shows: everybody’s appointments and my household’s own'),
    queryOf(fileQuery),
    async (c) =>
      c.json(presentAppointments(await readAppointments(contextOf(c)), c.req.valid('query').language)),
  )
  .get(
    '/appointments/:appointment/file',
    describe(TAG, 'One appointment as an iCalendar file'),
    queryOf(fileQuery),
    async (c) => {
      const { publicUrl } = c.var.config;
      const wish = { ...c.req.valid('query'), publicUrl };
      const text = await readAppointmentFile(contextOf(c), c.req.param('appointment'), wish);
      return answerCalendar(c, text, 'attachment');
    },
  )
  .get('/calendar-feeds', describe(TAG, 'My calendar feeds, without their addresses'), async (c) =>
    c.json({ feeds: (await readFeeds(contextOf(c))).map(presentFeed) }),
  )
  .post(
    '/calendar-feeds',
    describe(TAG, 'Make a calendar feed; its address is shown this once', ['thing-not-found']),
    jsonBody(feedWish),
    async (c) =>
      c.json(presentNewFeed(await makeFeed(contextOf(c), c.req.valid('json')), c.var.config.publicUrl), 201),
  )
  .post(
    '/calendar-feeds/:feed/renewal',
    describe(TAG, 'Give my feed a new address; the old one leads nowhere from now on', ['thing-not-found']),
    async (c) =>
      c.json(presentNewFeed(await renewFeed(contextOf(c), idParam(c, 'feed')), c.var.config.publicUrl), 201),
  )
  .delete('/calendar-feeds/:feed', describe(TAG, 'End my feed', ['thing-not-found']), async (c) => {
    await endFeed(contextOf(c), idParam(c, 'feed'));
    return c.body(null, 204);
  });

/** For calendar programs, which have no session: outside the storehouse's door, by an address that nobody can guess. */
export const openCalendarRoutes = new Hono<AppEnv>().get(
  '/calendars/:file',
  describe(TAG, 'A calendar feed (RFC 5545), for whoever knows its address', [
    'not-found',
    'too-many-attempts',
  ]),
  etag(),
  async (c) => {
    const [, secret = ''] = /^([\w-]{1,100})\.ics$/.exec(c.req.param('file')) ?? [];
    const { outside, config } = c.var;
    const text = await readFeed(outside, { secret, from: remoteAddress(c), publicUrl: config.publicUrl });
    // One program may keep it and asks each time whether it still holds; nothing between may.
    c.header('Cache-Control', 'private, no-cache');
    return answerCalendar(c, text, 'inline');
  },
);

function answerCalendar(c: HonoContext, text: string, disposition: 'inline' | 'attachment') {
  c.header('Content-Type', 'text/calendar; charset=utf-8');
  c.header('Content-Disposition', `${disposition}; filename="storehouse.ics"`);
  return c.body(text);
}
