import { Hono } from 'hono';
import { generateSpecs } from 'hono-openapi';
import type { AppEnv } from './app-env.ts';
import { DOCS_STYLE, docsPage } from './docs-page.ts';
import { PROBLEMS } from './problem-catalogue.ts';

const problemSchema = {
  type: 'object',
  description: 'RFC 9457 problem details with a stable code.',
  required: ['type', 'code', 'title', 'status', 'detail', 'instance', 'fields'],
  properties: {
    type: { type: 'string' },
    code: { type: 'string', enum: Object.keys(PROBLEMS) },
    title: { type: 'string' },
    status: { type: 'integer' },
    detail: { type: 'string' },
    instance: { type: 'string' },
    fields: {
      type: 'array',
      items: {
        type: 'object',
        required: ['field', 'message'],
        properties: { field: { type: 'string' }, message: { type: 'string' } },
      },
    },
  },
} as const;

/** The OpenAPI 3.1 document, generated from the routes' own schemas, and a page to read it on. */
function describeApi(app: Hono<AppEnv>) {
  return generateSpecs(app, {
    defaultValidationErrorResponse: false, // every refusal has one shape, and `default` says it
    documentation: {
      openapi: '3.1.0',
      info: {
        title: 'Sheafbook',
        version: '1',
        description:
          'Masses are whole grams, money whole minor units of the storehouse’s currency, days ISO 8601 dates, instants UTC. ' +
          'Every POST that moves money or mass needs an Idempotency-Key.',
      },
      components: { schemas: { Problem: structuredClone(problemSchema) as never } },
    },
  });
}

export function docsRoutes(app: Hono<AppEnv>) {
  return new Hono<AppEnv>()
    .get('/api/openapi.json', async (c) => c.json(await describeApi(app)))
    .get('/api/docs', async (c) => c.html(docsPage(await describeApi(app))))
    .get('/api/docs.css', (c) => c.body(DOCS_STYLE, 200, { 'Content-Type': 'text/css; charset=utf-8' }))
    .get('/problems/:code', (c) => {
      const code = c.req.param('code');
      const entry = Object.entries(PROBLEMS).find(([known]) => known === code)?.[1];
      return entry ? c.json({ code, ...entry }) : c.notFound();
    });
}
