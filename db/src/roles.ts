import postgres, { type Sql, type TransactionSql } from 'postgres';
import { StartRefusal } from './refusal.ts';

/**
 * The roles of a book, none of them a superuser or exempt from row-level security.
 * `sheafbook_owner` owns every object and migrates; `sheafbook_poster` owns the functions that write the ledger;
 * `sheafbook_housekeeping` owns those that delete what may be deleted; the running app logs in as `sheafbook_app`,
 * which owns nothing and is a member of nothing.
 */
export const ROLES = {
  owner: 'sheafbook_owner',
  poster: 'sheafbook_poster',
  app: 'sheafbook_app',
  housekeeping: 'sheafbook_housekeeping',
} as const;

/** What an administrator runs once where DATABASE_URL's own login may not create roles. */
export const ROLES_BY_HAND = `create role sheafbook_owner nologin;
create role sheafbook_poster nologin;
create role sheafbook_housekeeping nologin;
create role sheafbook_app login password '<a password for APP_DATABASE_URL>';
grant sheafbook_poster, sheafbook_housekeeping to sheafbook_owner with inherit false, set true;
grant sheafbook_owner to <the login of DATABASE_URL> with inherit true, set true;
revoke all on database <the database> from public;
grant connect on database <the database> to <the login of DATABASE_URL>, sheafbook_app;
grant connect, create on database <the database> to sheafbook_owner;`;

/** Creates the roles that are missing, with their memberships and their rights on this database. */
export async function ensureRoles(sql: Sql): Promise<void> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      await sql.begin(async (tx) => {
        await createMissingRoles(tx);
        await grantMemberships(tx);
        await grantDatabase(tx);
      });
      return refuseMightyRoles(sql);
    } catch (error) {
      // Roles belong to the whole server, so a migration of another database may be at it in this very moment.
      if (isCollision(error) && attempt < 10) continue;
      throw explain(error);
    }
  }
}

function isCollision(error: unknown): boolean {
  return (
    error instanceof postgres.PostgresError &&
    ['23505', '42710', 'XX000', '40001', '40P01'].includes(error.code)
  );
}

function explain(error: unknown): unknown {
  if (!(error instanceof postgres.PostgresError) || error.code !== '42501') return error;
  const message = `The login of DATABASE_URL may not prepare the roles of the book (${error.message}).
Let an administrator run this once, then start again with APP_DATABASE_URL too:\n${ROLES_BY_HAND}`;
  return new StartRefusal(message, { cause: error });
}

async function createMissingRoles(tx: TransactionSql): Promise<void> {
  await tx`do $$
    declare wanted text;
    begin
      foreach wanted in array array['sheafbook_owner', 'sheafbook_poster', 'sheafbook_housekeeping'] loop
        if not exists (select from pg_roles where rolname = wanted) then
          execute format('create role %I nologin', wanted);
        end if;
      end loop;
      if not exists (select from pg_roles where rolname = 'sheafbook_app') then
        create role sheafbook_app login;
      end if;
    end $$`;
}

/** The owner must be able to hand functions to the two others, and the migrating login to act as the owner. */
async function grantMemberships(tx: TransactionSql): Promise<void> {
  await tx`do $$
    begin
      if not pg_has_role('sheafbook_owner', 'sheafbook_poster', 'set') then
        grant sheafbook_poster to sheafbook_owner with inherit false, set true;
      end if;
      if not pg_has_role('sheafbook_owner', 'sheafbook_housekeeping', 'set') then
        grant sheafbook_housekeeping to sheafbook_owner with inherit false, set true;
      end if;
      if not (pg_has_role('sheafbook_owner', 'set') and pg_has_role('sheafbook_owner', 'usage')) then
        grant sheafbook_owner to current_user with inherit true, set true;
      end if;
    end $$`;
}

/**
 * Nobody else has business in this database: PUBLIC may neither connect to it nor make temporary tables in it. These
 * rights belong to the database itself, so a clone of it starts without them.
 */
export async function grantDatabase(tx: Sql | TransactionSql): Promise<void> {
  await tx`do $$
    declare here text := quote_ident(current_database());
    begin
      if not (has_database_privilege('sheafbook_owner', current_database(), 'connect, create')
              and has_database_privilege('sheafbook_app', current_database(), 'connect')) or exists (
           select from pg_database d, aclexplode(coalesce(d.datacl, acldefault('d', d.datdba))) a
           where d.datname = current_database() and a.grantee = 0) then
        execute 'revoke all on database ' || here || ' from public';
        execute 'grant connect, create on database ' || here || ' to sheafbook_owner';
        execute 'grant connect on database ' || here || ' to sheafbook_app';
      end if;
    end $$`;
}

async function refuseMightyRoles(sql: Sql): Promise<void> {
  const mighty = await sql<{ rolname: string }[]>`select rolname from pg_roles
    where rolname in ${sql(Object.values(ROLES))} and (rolsuper or rolbypassrls) order by rolname`;
  if (mighty.length === 0) return;
  const names = mighty.map((role) => role.rolname).join(', ');
  throw new StartRefusal(`${names} must be neither superuser nor exempt from row-level security`);
}
