import type { Answer, TestApp } from './app.ts';

/** What a refused command must leave alone: the counts and sums of the ledger, and a hash of every table of the book. */
export type Fingerprint = { entries: number; movements: number; totals: string; tables: string };

/**
 * Two of these are equal when nothing at all was written between them, whatever the table: each row counts by where it lies
 * and by the transaction that wrote it, so that one that was written anew as it was shows, too. The statement is prepared
 * once a connection; to write out every table, as `schema_to_xml` does, was most of what some files of tests did.
 */
export async function fingerprintOf({ admin }: Pick<TestApp, 'admin'>): Promise<Fingerprint> {
  const tables = await admin<{ name: string }[]>`select relname as name from pg_class
    where relnamespace = 'book'::regnamespace and relkind in ('r', 'p', 'm') order by relname`;
  const hashes = tables
    .map(
      ({ name }) =>
        admin`(select md5(string_agg(concat(tableoid, ctid, xmin), ' ')) from book.${admin(name)})`,
    )
    .reduce((before, next) => admin`${before}, ${next}`);
  const [row] = await admin<Fingerprint[]>`select
    (select count(*)::int from book.entry) as entries, (select count(*)::int from book.movement) as movements,
    (select coalesce(sum(inflow + outflow), 0)::text from book.account) as totals,
    md5(array[${hashes}]::text) as tables`;
  if (!row) throw new Error('a select of aggregates gives one row');
  return row;
}

/** How a call was answered, which fields it named, and whether every table is as it was before. */
export async function refusalOf(app: TestApp, call: () => Promise<Answer>) {
  const before = await fingerprintOf(app);
  const { status, body } = await call();
  const after = await fingerprintOf(app);
  const fields: string[] = (body.fields ?? []).map((problem: { field: string }) => problem.field);
  return { status, code: body.code, fields, isUnchanged: JSON.stringify(before) === JSON.stringify(after) };
}

/** A refusal that named these fields and changed nothing. */
export const refused = (status: number, code: string, ...fields: readonly string[]) => ({
  status,
  code,
  fields,
  isUnchanged: true,
});
