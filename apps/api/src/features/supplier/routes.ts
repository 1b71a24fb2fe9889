import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayEditSuppliers } from './policy.ts';
import { presentSupplier, presentSuppliers } from './present.ts';
import { supplierEdit, supplierQuery, supplierWish } from './schema.ts';
import { addSupplier, editSupplier, findSuppliers, readSupplier } from './use-cases.ts';

export const supplierRoutes = new Hono<AppEnv>()
  .get(
    '/suppliers',
    describe('Suppliers', 'Suppliers and carriers by name'),
    queryOf(supplierQuery),
    async (c) => {
      const query = c.req.valid('query');
      const page = await findSuppliers(contextOf(c), query);
      if (query.format === 'csv') return answerCsv(c, 'suppliers', page.rows.map(presentSupplier));
      return c.json(presentSuppliers(page));
    },
  )
  .post(
    '/suppliers',
    describe('Suppliers', 'Add a supplier or a carrier', ['already-there']),
    may(mayEditSuppliers),
    jsonBody(supplierWish),
    async (c) => c.json(presentSupplier(await addSupplier(contextOf(c), c.req.valid('json'))), 201),
  )
  .get('/suppliers/:supplier', describe('Suppliers', 'One supplier', ['thing-not-found']), async (c) =>
    c.json(presentSupplier(await readSupplier(contextOf(c), idParam(c, 'supplier')))),
  )
  .put(
    '/suppliers/:supplier',
    describe('Suppliers', 'Change name or contact', ['stale-version', 'already-there']),
    may(mayEditSuppliers),
    jsonBody(supplierEdit),
    async (c) => {
      const supplier = await editSupplier(contextOf(c), idParam(c, 'supplier'), c.req.valid('json'));
      return c.json(presentSupplier(supplier));
    },
  );
