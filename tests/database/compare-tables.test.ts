import { compareTables } from '@sheafbook/db';
import { bigint, pgSchema, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestDatabase, type TestDatabase } from '../support/database.ts';

let book: TestDatabase;
beforeAll(async () => {
  book = await openTestDatabase();
});
afterAll(() => book.close());

test('each difference between Drizzle and the database is named', async () => {
  await book.admin`create schema farm`;
  await book.admin`create table farm.barn (farm_id uuid, barn_id uuid, bales book.amount not null, roof char(3) not null,
    doors text, primary key (farm_id, barn_id))`;
  await book.admin`create table farm.coop (hens int)`;
  const farm = pgSchema('farm');
  const barn = farm.table(
    'barn',
    {
      farmId: uuid('farm_id').notNull(),
      barnId: uuid('barn_id').defaultRandom().notNull(),
      bales: bigint({ mode: 'number' }).notNull(),
      roof: text().notNull(),
      doors: text().notNull(),
      colour: text(),
    },
    (table) => [primaryKey({ columns: [table.barnId, table.farmId] })],
  );
  const silo = farm.table('silo', { grams: bigint({ mode: 'number' }) });
  expect(await compareTables(book.admin, { barn, silo, notATable: 1 }, ['farm'])).toEqual([
    'farm.barn has primary key (farm_id, barn_id), Drizzle says (barn_id, farm_id)',
    'farm.barn.barn_id has no default, Drizzle says it has one',
    'farm.barn.colour is in Drizzle only',
    'farm.barn.doors is nullable, Drizzle says not null',
    'farm.barn.roof is character(3), Drizzle says text',
    'farm.coop is in the database only',
    'farm.silo is in Drizzle only',
  ]);
});
