import { createMiddleware } from 'hono/factory';
import type { AppEnv } from '../app-env.ts';
import { inSpanish } from './spanish.ts';

/** What of an answer is said to a person; everything else of it is data, and is the same in every language. */
const SAID = new Set([
  'title',
  'detail',
  'message',
  'words',
  'sentence',
  'tieBreak',
  'warning',
  'invariant',
  'figure',
  'lookedAt',
  'lookedFor',
]);

/**
 * Says an answer in the language that its reader asks for with Accept-Language: English, or Spanish where that comes
 * first. Only sentences of our own are changed, never what somebody wrote.
 */
export const inTheirLanguage = createMiddleware<AppEnv>(async (c, next) => {
  if (!/^\s*es\b/i.test(c.req.header('Accept-Language') ?? '')) return next();
  const json = c.json.bind(c) as (...answer: unknown[]) => Response;
  c.json = ((body: unknown, ...rest: unknown[]) => json(translate(body), ...rest)) as typeof c.json;
  c.header('Content-Language', 'es');
  await next();
});

/** Beside a sentence that names something with a name in each language stands the same in Spanish, as `wordsEs` beside `words`. */
const spanishBeside = (body: object, key: string): string | undefined => {
  const beside = (body as Record<string, unknown>)[`${key}Es`];
  return typeof beside === 'string' ? beside : undefined;
};

/** Lists of sentences. */
const SAID_LISTS = new Set(['warnings']);

const sayAll = (value: unknown): unknown =>
  Array.isArray(value)
    ? value.map((item) => (typeof item === 'string' ? inSpanish(item) : translate(item)))
    : value;

function translate(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(translate);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [
      key,
      SAID.has(key) && typeof inner === 'string'
        ? (spanishBeside(value, key) ?? inSpanish(inner))
        : SAID_LISTS.has(key)
          ? sayAll(inner)
          : translate(inner),
    ]),
  );
}
