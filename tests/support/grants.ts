import type { Sql } from 'postgres';

/**
 * Each right of the book's roles and of everybody, in words: "select", or "update(name, version)" where it is given on
 * single columns. What a role has no right on is left out.
 */
export async function readGrants(admin: Sql): Promise<Record<string, Record<string, string>>> {
  const rows = await admin<{ role: string; object: string; rights: string }[]>`
    with given as (
      select a.grantee, n.nspname || '.' || c.relname as object, a.privilege_type, null::text as "column"
      from pg_class c join pg_namespace n on n.oid = c.relnamespace,
        aclexplode(coalesce(c.relacl, acldefault('r', c.relowner))) a
      where n.nspname in ('book', 'door') and c.relkind in ('r', 'v', 'm', 'p', 'f')
      union all
      select a.grantee, n.nspname || '.' || c.relname, a.privilege_type, t.attname
      from pg_attribute t join pg_class c on c.oid = t.attrelid join pg_namespace n on n.oid = c.relnamespace,
        aclexplode(t.attacl) a
      where n.nspname in ('book', 'door')
      union all
      select a.grantee, n.nspname || '.' || p.proname || '()', a.privilege_type, null
      from pg_proc p join pg_namespace n on n.oid = p.pronamespace,
        aclexplode(coalesce(p.proacl, acldefault('f', p.proowner))) a
      where n.nspname in ('book', 'door') and a.grantee <> p.proowner),
    spoken as (
      select case grantee when 0 then 'public' else pg_get_userbyid(grantee) end as role, object,
        lower(privilege_type) as "right", string_agg("column", ', ' order by "column") as columns
      from given group by grantee, object, privilege_type, ("column" is null))
    select role, object, string_agg("right" || coalesce('(' || columns || ')', ''), ' ' order by "right") as rights
    from spoken where role = 'public' or (role like 'sheafbook\\_%' and role <> 'sheafbook_owner')
    group by role, object order by role, object`;
  const matrix: Record<string, Record<string, string>> = {};
  for (const { role, object, rights } of rows) matrix[role] = { ...matrix[role], [object]: rights };
  return matrix;
}
