import type { TransactionSql } from 'postgres';
import { QUEUE_SCHEMA } from '../queue.ts';

/** Domains and enumerated types of our own, with their constraints. */
export async function printTypes(tx: TransactionSql): Promise<string[]> {
  const rows = await tx<{ line: string }[]>`
    select concat_ws(' ', case t.typtype when 'd' then 'domain' when 'e' then 'enum' else 'type' end,
      t.oid::regtype::text,
      case when t.typtype = 'd' then 'as ' || format_type(t.typbasetype, t.typtypmod) end,
      'default ' || t.typdefault,
      case when t.typnotnull then 'not null' end,
      '(' || (select string_agg(quote_literal(enumlabel), ', ' order by enumsortorder) from pg_enum e
        where e.enumtypid = t.oid) || ')',
      (select string_agg('constraint ' || quote_ident(conname) || ' ' || pg_get_constraintdef(k.oid), ' ' order by conname)
        from pg_constraint k where k.contypid = t.oid and k.contype = 'c')) as line
    from pg_type t join pg_namespace n on n.oid = t.typnamespace left join pg_class c on c.oid = t.typrelid
    where n.nspname !~ '^pg_' and n.nspname not in ('information_schema', ${QUEUE_SCHEMA})
      and (t.typtype in ('d', 'e', 'r') or (t.typtype = 'c' and c.relkind = 'c'))
      and not exists (select from pg_depend d where d.objid = t.oid and d.classid = 'pg_type'::regclass and d.deptype = 'e')
    order by n.nspname, t.typname`;
  return rows.map((row) => row.line);
}

/** Functions whole, each with the role that it runs as or belongs to, and who may call it. */
export async function printFunctions(tx: TransactionSql): Promise<string[]> {
  const rows = await tx<{ line: string }[]>`
    select rtrim(pg_get_functiondef(p.oid), E' \n') || E'\n  owner ' || pg_get_userbyid(p.proowner)
      || E'\n  execute: ' || coalesce((select string_agg(g.name, ', ' order by g.name) from (
        select case acl.grantee when 0 then 'public' else pg_get_userbyid(acl.grantee) end as name
        from aclexplode(coalesce(p.proacl, acldefault('f', p.proowner))) acl where acl.grantee <> p.proowner) g),
        'owner alone') as line
    from pg_proc p join pg_namespace n on n.oid = p.pronamespace
    where n.nspname !~ '^pg_' and n.nspname not in ('information_schema', ${QUEUE_SCHEMA}) and p.prokind in ('f', 'p')
      and not exists (select from pg_depend d where d.objid = p.oid and d.classid = 'pg_proc'::regclass and d.deptype = 'e')
    order by n.nspname, p.proname, pg_get_function_identity_arguments(p.oid)`;
  return rows.map((row) => row.line);
}
