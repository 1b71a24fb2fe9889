import { bodyLimit } from 'hono/body-limit';
import { createMiddleware } from 'hono/factory';
import type { AppEnv } from './app-env.ts';
import { Problem } from './problem.ts';

const MOST_BODY_BYTES = 256 * 1024;
/** A photo of 2 MB grows by a third on the way, as base64 text. */
const MOST_PHOTO_BODY_BYTES = 3 * 1024 * 1024;

/** A year of a bank's lines, as text inside JSON. */
const MOST_BANK_BODY_BYTES = 2 * 1024 * 1024;

/** A year of a group's sheets, as base64 text: several thousand rows. */
const MOST_IMPORT_BODY_BYTES = 6 * 1024 * 1024;

/** A logger's file is read as it comes and may be as long as it likes: this is four hundred years of a line a minute. */
export const MOST_STREAMED_BYTES = 8 * 1024 * 1024 * 1024;

/** What these take is read piece by piece by the route itself, which counts its bytes. */
const isStreamed = (path: string): boolean => /\/places\/[^/]+\/(logs|log-previews)$/.test(path);

function mostBytesAt(path: string): number {
  if (/\/(imports|import-trials)$/.test(path)) return MOST_IMPORT_BODY_BYTES;
  if (path.endsWith('/photos')) return MOST_PHOTO_BODY_BYTES;
  return /\/bank\/(files|previews)$/.test(path) ? MOST_BANK_BODY_BYTES : MOST_BODY_BYTES;
}
const CHANGES = new Set(['POST', 'PUT', 'PATCH', 'DELETE']);

const measureBodyTo = (mostBytes: number) =>
  bodyLimit({
    maxSize: mostBytes,
    onError: () => {
      throw new Problem('body-too-large', { mostBytes });
    },
  });

/** Most requests say that they are small, or have no body at all; only of the others is the body opened to measure it. */
export const limitBody = createMiddleware<AppEnv>(async (c, next) => {
  if (isStreamed(c.req.path)) return next();
  const isRead = c.req.method === 'GET' || c.req.method === 'HEAD';
  const length = Number(c.req.header('Content-Length') ?? Number.NaN);
  const mostBytes = mostBytesAt(c.req.path);
  const saysItIsSmall = length <= mostBytes && c.req.header('Transfer-Encoding') === undefined;
  return isRead || saysItIsSmall ? next() : measureBodyTo(mostBytes)(c, next);
});

/** A browser names the page that a change comes from; another site's page is refused. */
export const refuseOtherOrigins = createMiddleware<AppEnv>(async (c, next) => {
  const origin = c.req.header('Origin');
  const isForeign = origin !== undefined && !isOwn(origin, [c.req.header('Host'), c.var.config.publicUrl]);
  if (CHANGES.has(c.req.method) && (isForeign || c.req.header('Sec-Fetch-Site') === 'cross-site'))
    throw new Problem('origin-refused');
  await next();
});

function isOwn(origin: string, own: readonly (string | undefined)[]): boolean {
  if (!URL.canParse(origin)) return false;
  const { host } = new URL(origin);
  return own.some(
    (address) => address === host || (address?.includes('://') && new URL(address).host === host),
  );
}

/** What an answer says is for whoever asked: no browser and no proxy keeps it. */
export const keepOutOfCaches = createMiddleware<AppEnv>(async (c, next) => {
  c.header('Cache-Control', 'no-store'); // before the answer is made: a header that is added later makes it anew
  await next();
});
