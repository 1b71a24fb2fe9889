import { compareTables } from '@sheafbook/db';
import { afterAll, beforeAll, expect, test } from 'vitest';
import * as tables from '../../db/src/tables/index.ts';
import { openTestDatabase, type TestDatabase } from '../support/database.ts';

let book: TestDatabase;
beforeAll(async () => {
  book = await openTestDatabase();
});
afterAll(() => book.close());

test('the Drizzle tables describe the tables of the book', async () => {
  expect(await compareTables(book.admin, tables)).toEqual([]);
});
