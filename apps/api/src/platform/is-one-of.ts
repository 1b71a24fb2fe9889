import { type SQL, sql } from 'drizzle-orm';
import type { PgColumn } from 'drizzle-orm/pg-core';

/** Whether a column is one of these ids, bound as one array: a statement takes 65,535 parameters at the most. */
export const isOneOf = (column: PgColumn, ids: readonly string[]): SQL =>
  sql`${column} = any(${sql.param([...ids])}::uuid[])`;
