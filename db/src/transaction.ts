import { assert } from '@sheafbook/units';
import type { ExtractTablesWithRelations } from 'drizzle-orm';
import { PgDialect } from 'drizzle-orm/pg-core';
import { PostgresJsSession, PostgresJsTransaction } from 'drizzle-orm/postgres-js';
import type { ParameterOrJSON, Sql, TransactionSql } from 'postgres';
import type { Tx } from './connect.ts';
import type { Line, Lines } from './lines.ts';

/** What the policies read, for the length of one transaction; '' stands for nobody and nothing. */
export type TransactionSettings = {
  readonly storehouse: string;
  readonly login: string;
  readonly household: string;
  readonly task: string;
};

export type TransactionOptions = {
  /** All four, always: none is inherited from whoever used the connection before. */
  readonly settings: TransactionSettings;
  /** One snapshot for everything that is read. */
  readonly isSnapshot?: boolean;
};

/** What a transaction can be told while it runs. */
export type Steps = {
  /** One more statement follows, and the commit goes along with it. */
  lastFollows(): void;
  /** Nothing further is sent; the next attempt throws, and what was done is rolled back. */
  giveUp(): void;
};

export type Work<Result> = (tx: Tx, steps: Steps) => Promise<Result>;

/**
 * Runs `work` in one transaction on one connection, with its settings. Its begin and its settings travel along with the
 * first statement, and statements are prepared once on a connection, so that each costs one round trip and is not
 * planned anew. When a connection is lost on the way, nothing further is sent: it would go down a new one, outside of
 * any transaction.
 */
export async function runTransaction<Result>(
  lines: Lines,
  options: TransactionOptions,
  work: Work<Result>,
): Promise<Result> {
  const line = await lines.take();
  try {
    return await runOn(line, options, work);
  } finally {
    lines.give(line);
  }
}

async function runOn<Result>(line: Line, options: TransactionOptions, work: Work<Result>): Promise<Result> {
  const flight: Flight = { line, isLastNext: false, isOver: false, failure: undefined, commit: undefined };
  const opening = open(line, options);
  opening.catch(() => undefined); // told below, unless what comes after it fails first
  try {
    if (!line.isWarm) await opening;
    const result = await work(openTx(flight), stepsOf(flight));
    await opening;
    await close(flight);
    line.isWarm = true;
    return result;
  } catch (error) {
    flight.isOver = true;
    if (!line.isLost) await line.sql`rollback`.catch(() => undefined);
    throw line.isLost ? new Error('the connection to the database was lost', { cause: error }) : error;
  }
}

function open({ sql }: Line, { settings, isSnapshot }: TransactionOptions): Promise<unknown> {
  const { storehouse, login, household, task } = settings;
  return Promise.all([
    (isSnapshot ? sql`begin isolation level repeatable read` : sql`begin`).execute(),
    sql`select set_config('app.storehouse', ${storehouse}, true), set_config('app.login', ${login}, true),
      set_config('app.household', ${household}, true), set_config('app.task', ${task}, true)`.execute(),
  ]);
}

type Flight = {
  readonly line: Line;
  isLastNext: boolean;
  /** Committed or given up. What a careless `work` still sends must not reach whoever has the line next. */
  isOver: boolean;
  /** The first statement that failed, even if `work` made light of it. */
  failure: unknown;
  commit: Promise<{ command: string }> | undefined;
};

const stepsOf = (flight: Flight): Steps => ({
  lastFollows: () => {
    flight.isLastNext = true;
  },
  giveUp: () => {
    flight.isOver = true;
  },
});

async function close(flight: Flight): Promise<void> {
  assert(!flight.isOver, 'a transaction that was given up is not committed');
  flight.isOver = true;
  if (flight.failure !== undefined) throw flight.failure;
  const { command } = await (flight.commit ?? flight.line.sql`commit`);
  if (flight.failure !== undefined) throw flight.failure;
  assert(command === 'COMMIT', `a commit must not end as ${command}`);
}

/** Statements of more parameters than this, such as an insert of many rows, seldom come again in the same length. */
const MOST_PREPARED_PARAMETERS = 60;

/** Sends what Drizzle has compiled; Drizzle itself would have the server plan each statement anew. */
function send(flight: Flight, text: string, parameters: readonly unknown[]) {
  const { sql, isLost } = flight.line;
  assert(!isLost, 'nothing is sent once the connection is lost');
  assert(!flight.isOver && flight.commit === undefined, 'nothing is sent once the transaction is over');
  const prepare = parameters.length <= MOST_PREPARED_PARAMETERS;
  const query = sql.unsafe(text, [...parameters] as ParameterOrJSON<never>[], { prepare });
  query.execute().catch((error: unknown) => {
    flight.failure ??= error;
  });
  if (flight.isLastNext) {
    flight.commit = sql`commit`.execute();
    flight.commit.catch(() => undefined); // awaited in `close`, unless `work` fails before
  }
  return query;
}

type NoSchema = Record<string, never>;
/** What Drizzle's types ask for; all that it uses of it is `unsafe`. */
type Client = Sql & TransactionSql;

const dialect = new PgDialect();

const openTx = (flight: Flight): Tx =>
  txOver({ unsafe: (text: string, parameters: readonly unknown[] = []) => send(flight, text, parameters) });

/** Drizzle over a transaction that runs already, begun by hand. */
export function txOver(client: { unsafe(text: string, parameters?: never[]): unknown }): Tx {
  const session = new PostgresJsSession<Client, NoSchema, ExtractTablesWithRelations<NoSchema>>(
    client as unknown as Client,
    dialect,
    undefined,
  );
  return new PostgresJsTransaction(dialect, session, undefined);
}
