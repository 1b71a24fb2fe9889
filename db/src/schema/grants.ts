import type { TransactionSql } from 'postgres';
import { ROLES } from '../roles.ts';
import type { Detail } from './detail.ts';

/** What each role may do with a table, and with single columns of it. The owner's own rights go without saying. */
export function grantLines(tx: TransactionSql): Promise<Detail[]> {
  return tx<Detail[]>`
    with given as (
      select c.oid, c.relowner, null::text as attname, acl.grantee, acl.privilege_type, acl.is_grantable
      from pg_class c, aclexplode(c.relacl) acl
      union all
      select c.oid, c.relowner, a.attname::text, acl.grantee, acl.privilege_type, acl.is_grantable
      from pg_class c join pg_attribute a on a.attrelid = c.oid, aclexplode(a.attacl) acl
    ), right_by_right as (
      select oid, case grantee when 0 then 'public' else pg_get_userbyid(grantee) end as grantee, is_grantable,
        lower(privilege_type) || coalesce(' (' || string_agg(quote_ident(attname), ', ' order by attname) || ')', '')
          as privilege
      from given where grantee <> relowner
      group by oid, grantee, is_grantable, privilege_type, attname is null
    )
    select oid::regclass::text as owner, 'grant ' || string_agg(privilege, ', ' order by privilege) || ' to ' || grantee
      || case when is_grantable then ' with grant option' else '' end as line
    from right_by_right group by oid, grantee, is_grantable order by oid, grantee, is_grantable`;
}

/** Roles of the book, and what they may do with the database and its schemas. */
export async function printRolesAndSchemas(tx: TransactionSql): Promise<string[]> {
  const rows = await tx<{ line: string }[]>`
    (select 'role ' || rolname || case when rolcanlogin then ' login' else ' nologin' end
      || case when rolsuper then ' superuser' else '' end || case when rolbypassrls then ' bypassrls' else '' end
      || case when rolcreaterole then ' createrole' else '' end || case when rolcreatedb then ' createdb' else '' end
      || coalesce(' member of ' || (select string_agg(pg_get_userbyid(m.roleid) || case when m.inherit_option
        then ' with inherit' else '' end, ', ' order by pg_get_userbyid(m.roleid))
        from pg_auth_members m where m.member = r.oid), '') as line
    from pg_roles r where rolname in ${tx(Object.values(ROLES))} order by rolname)
    union all
    (select 'grant ' || string_agg(lower(acl.privilege_type), ', ' order by acl.privilege_type) || ' on the database to '
      || case acl.grantee when 0 then 'public' else pg_get_userbyid(acl.grantee) end
    from pg_database d, aclexplode(coalesce(d.datacl, acldefault('d', d.datdba))) acl
    where d.datname = current_database() and acl.grantee <> d.datdba group by acl.grantee
    order by case acl.grantee when 0 then 'public' else pg_get_userbyid(acl.grantee) end)
    union all
    (select 'extension ' || extname || ' in ' || extnamespace::regnamespace::text
    from pg_extension where extname <> 'plpgsql' order by extname)
    union all
    (select 'schema ' || quote_ident(n.nspname) || coalesce(E'\n' || string_agg(g.line, E'\n' order by g.line), '')
    from pg_namespace n left join lateral (
      select '  grant ' || string_agg(lower(acl.privilege_type), ', ' order by acl.privilege_type) || ' to '
        || case acl.grantee when 0 then 'public' else pg_get_userbyid(acl.grantee) end as line
      from aclexplode(n.nspacl) acl where acl.grantee <> n.nspowner group by acl.grantee) g on true
    where n.nspname !~ '^pg_' and n.nspname <> 'information_schema' group by n.oid, n.nspname order by n.nspname)`;
  return rows.map((row) => row.line);
}
