import { assert } from '@sheafbook/units';
import type { Fragment, TransactionSql } from 'postgres';
import { refuseUnless } from '../refusal.ts';

/** Column names, quoted, with commas between them. */
export function identifiers(tx: TransactionSql, names: readonly string[]): Fragment {
  const [first, ...rest] = names;
  assert(first !== undefined, 'at least one name is needed');
  return rest.reduce<Fragment>((list, name) => tx`${list}, ${tx(name)}`, tx`${tx(first)}`);
}

/** What the database was migrated with, told by the newest file and a hash over all of them. */
export async function loadMigrations(
  tx: TransactionSql,
): Promise<{ migration: string; migrationsSha256: string }> {
  const [known] = await tx`select where to_regclass('migration.applied') is not null`;
  refuseUnless(known, 'there is no book in this database: it was never migrated');
  const [row] = await tx<{ migration: string | null; migrationsSha256: string | null }[]>`
    select (array_agg(name order by number desc))[1] as migration,
      encode(sha256(convert_to(string_agg(sha256, '' order by number), 'UTF8')), 'hex') as "migrationsSha256"
    from migration.applied`;
  refuseUnless(
    row?.migration && row.migrationsSha256,
    'there is no book in this database: it was never migrated',
  );
  return { migration: row.migration, migrationsSha256: row.migrationsSha256 };
}
