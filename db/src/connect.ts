import { assert } from '@sheafbook/units';
import { drizzle, type PostgresJsDatabase } from 'drizzle-orm/postgres-js';
import postgres, { type Sql } from 'postgres';
import { type Lines, openLines } from './lines.ts';
import { refuseUnless } from './refusal.ts';

/** The app's connections, as Drizzle sees them. Not assignable to `Tx`: a query can't run outside a transaction. */
export type Db = PostgresJsDatabase & {
  /** Connections for transactions, see `runTransaction`. */
  readonly lines: Lines;
};
export type Tx = Parameters<Parameters<Db['transaction']>[0]>[0];

export type ConnectOptions = {
  maxConnections?: number;
  applicationName?: string;
  /** Hears every statement that is sent, and slows it down: for looking at what the app does, not for running it. */
  onStatement?: (connection: number, text: string, parameters: unknown[]) => void;
};

/**
 * Opens the app's connections: `maxConnections` for transactions and half as many for what is asked outside of one, such
 * as sessions; `sql.end` closes them all. Values as they arrive: int8 and numeric as strings (Drizzle's
 * `bigint({ mode: 'number' })` converts; by hand, use `Number` on what a CHECK keeps below 2^53); and since Drizzle takes
 * over the client's date parsers, dates and instants are strings for `sql` too.
 */
export function connectApp(url: string, options: ConnectOptions = {}): { db: Db; sql: Sql } {
  const most = options.maxConnections ?? 10;
  const settings = {
    connect_timeout: 30,
    onnotice: () => undefined,
    connection: { application_name: options.applicationName ?? 'sheafbook', TimeZone: 'UTC' },
    ...(options.onStatement && { debug: options.onStatement }),
  };
  const sql = postgres(url, { ...settings, max: Math.ceil(most / 2) });
  const lines = openLines(url, settings, most);
  const db = Object.assign(drizzle(sql), { lines });
  const end = sql.end.bind(sql);
  const endAll = async (ending?: { timeout?: number }) => {
    await Promise.all([lines.end(ending), end(ending)]);
  };
  return { db, sql: Object.assign(sql, { end: endAll }) };
}

export type CheckOptions = { allowUnsafe?: boolean };

/**
 * Refuses a server that could lose what it has acknowledged, or that is too old. `allowUnsafe` is for throwaway
 * servers of tests alone, which run without fsync to be quick.
 */
export async function checkServer(sql: Sql, { allowUnsafe = false }: CheckOptions = {}): Promise<void> {
  const [server] = await sql<{ version: number; fsync: string; commit: string; encoding: string }[]>`
    select current_setting('server_version_num')::int as version, current_setting('fsync') as fsync,
      current_setting('synchronous_commit') as commit, current_setting('server_encoding') as encoding`;
  assert(server, 'a select without from returns one row');
  refuseUnless(server.version >= 180_000, `PostgreSQL 18 or newer is needed, this is ${server.version}`);
  refuseUnless(
    server.encoding === 'UTF8',
    `the database must be encoded in UTF8, this is ${server.encoding}`,
  );
  if (allowUnsafe) return;
  refuseUnless(
    server.fsync === 'on',
    'the server runs with fsync off and could lose the book in a power cut',
  );
  refuseUnless(
    server.commit !== 'off',
    'the server runs with synchronous_commit off and could lose what it confirmed',
  );
}

/** Refuses to run the app as a role that row-level security does not bind (ledger-notes 2d). */
export async function checkAppRole(sql: Sql): Promise<void> {
  const [role] = await sql<{ name: string; isMighty: boolean; isOwner: boolean }[]>`
    select current_user as name, rolsuper or rolbypassrls as "isMighty",
      pg_has_role('sheafbook_owner', 'member') as "isOwner"
    from pg_roles where rolname = current_user`;
  assert(role, 'current_user is a role');
  refuseUnless(!role.isMighty, `the app must not run as ${role.name}, which passes row-level security`);
  refuseUnless(!role.isOwner, `the app must not run as ${role.name}, which owns the book's tables`);
}
