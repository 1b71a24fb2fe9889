import type { Sql } from 'postgres';
import { printFunctions, printTypes } from './schema/functions.ts';
import { printRolesAndSchemas } from './schema/grants.ts';
import { printTables } from './schema/tables.ts';

const HEAD = `-- What a freshly migrated database holds, read from its catalogue. Printed by \`npm run schema\` and compared in the
-- tests; not meant to be run. A migration, its Drizzle tables and this file change together.`;

/**
 * Prints the whole schema as text that is the same on every server: roles, schemas, types, tables with their
 * constraints, indexes, policies and grants, views, functions. `sql` may be any login that sees the catalogue.
 */
export async function printSchema(sql: Sql): Promise<string> {
  return sql.begin('isolation level repeatable read read only', async (tx) => {
    await tx`set local search_path to ''`; // so that every name is printed with its schema
    const blocks = [
      HEAD,
      (await printRolesAndSchemas(tx)).join('\n'),
      (await printTypes(tx)).join('\n'),
      ...(await printTables(tx)),
      ...(await printFunctions(tx)),
    ];
    return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
  });
}
