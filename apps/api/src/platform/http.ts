import { createHash } from 'node:crypto';
import type { Context as HonoContext } from 'hono';
import { createMiddleware } from 'hono/factory';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import { describeRoute, validator } from 'hono-openapi';
import { z } from 'zod';
import type { Actor } from './actor.ts';
import type { AppEnv } from './app-env.ts';
import type { Context } from './context.ts';
import { listUnfitTexts } from './fit-text.ts';
import { KeptAnswer } from './kept-answer.ts';
import { WHOLE_LIST } from './paging.ts';
import { Problem } from './problem.ts';
import type { ProblemCode } from './problem-catalogue.ts';
import { listFields } from './to-problem.ts';

/** Refuses before the body is read, when the actor's duties do not include this. */
export const may = (
  policy: (actor: Actor) => boolean,
  code: 'duty-missing' | 'household-needed' = 'duty-missing',
) =>
  createMiddleware<AppEnv>(async (c, next) => {
    if (!policy(c.var.actor)) throw new Problem(code);
    await next();
  });

/** Reads and checks the JSON body. Unknown fields are refused by the schemas, which are all strict. */
export const jsonBody = <Schema extends z.ZodType>(schema: Schema) =>
  validator('json', schema, (result, c) => {
    refuseOtherKinds(c.req.raw);
    refuseImpossible(result);
  });

/** A body of another kind was read as an empty one, and its fields would be reported missing: says what is really wrong. */
function refuseOtherKinds(request: Request): void {
  const { headers } = request;
  if (/^application\/([a-z.-]+\+)?json(;|$)/i.test(headers.get('Content-Type') ?? '')) return;
  if (request.body !== null && headers.get('Content-Length') !== '0') throw new Problem('not-json');
}

/** Reads and checks the query string. */
export function queryOf<Schema extends z.ZodType>(schema: Schema) {
  const check = validator('query', schema, refuseImpossible);
  const checkAndFill: typeof check = (c, next) =>
    check(c, () => {
      fillSpreadsheet(c.req.valid('query'), c.req.query('limit'));
      return next();
    });
  return Object.assign(checkAndFill, check); // with what the API's description reads off it
}

/** A spreadsheet is the whole list unless a page of it is asked for. */
function fillSpreadsheet(query: unknown, asked: string | undefined): void {
  const reading = query as { format?: unknown; limit?: unknown };
  if (reading.format === 'csv' && reading.limit !== undefined && asked === undefined)
    reading.limit = WHOLE_LIST;
}

type Checked =
  | { readonly success: true; readonly data: unknown }
  | { readonly success: false; readonly error: Parameters<typeof listFields>[0] };

function refuseImpossible(result: Checked): void {
  const fields = result.success ? listUnfitTexts(result.data) : listFields(result.error);
  if (fields.length > 0) throw new Problem('invalid-input', { fields });
}

/** An id in the path. One that is no id at all names nothing here. */
export function idParam(c: HonoContext, name: string): string {
  const parsed = z.uuid().safeParse(c.req.param(name));
  if (!parsed.success) throw new Problem('thing-not-found', { thing: name });
  return parsed.data;
}

/** The use case's context of a request that changes nothing or needs no key. */
export function contextOf(c: HonoContext<AppEnv>): Context {
  return { ...c.var.outside, actor: c.var.actor };
}

/** The key of a command that counts once; asked for before a body that is read as a stream. */
export function requireKey(c: HonoContext<AppEnv>): string {
  const key = c.req.header('Idempotency-Key')?.trim();
  if (!key || key.length > 200) throw new Problem('idempotency-key-missing');
  return key;
}

/**
 * Carries out a command that moves money or mass, once for each Idempotency-Key: a retry gets the first answer back,
 * with the same status, and the same key with another body is refused.
 */
export async function answerOnce<Result, Body, Status extends ContentfulStatusCode>(
  c: HonoContext<AppEnv>,
  answer: {
    status: Status;
    run: (context: Context) => Promise<Result>;
    present: (result: Result) => Body;
    /** What tells this body from another, where it was read already as a stream. */
    body?: string;
  },
) {
  const key = requireKey(c);
  const { householdId } = c.var.actor;
  const requestHash = createHash('sha256')
    .update(JSON.stringify([c.req.method, c.req.path, householdId, answer.body ?? (await c.req.text())]))
    .digest('hex');
  const once = { key, requestHash, status: answer.status, present: answer.present };
  try {
    const result = await answer.run({ ...contextOf(c), once });
    return c.json(answer.present(result), answer.status);
  } catch (error) {
    if (!(error instanceof KeptAnswer)) throw error;
    c.header('Idempotent-Replay', 'true');
    return c.json(error.body as Body, error.status as Status);
  }
}

/** Says what a route does and which refusals it is known for, for the OpenAPI document. */
export const describe = (tag: string, summary: string, refusals: readonly ProblemCode[] = []) =>
  describeRoute({
    tags: [tag],
    summary,
    responses: {
      '2XX': { description: 'What was asked for.' },
      default: {
        description: `RFC 9457 problem${refusals.length > 0 ? `: ${refusals.join(', ')}, or one that every route may give` : ''}.`,
        content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
      },
    },
  });
