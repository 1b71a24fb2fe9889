import type { Db } from '@sheafbook/db';
import type { Sql } from 'postgres';
import type { Actor } from './actor.ts';
import type { Mail } from './mail.ts';

/** What a use case needs from outside: the database, the time, chance, and who is asking. */
export type Outside = {
  readonly db: Db;
  readonly sql: Sql;
  readonly now: () => Date;
  readonly randomBytes: (count: number) => Uint8Array;
  /** How letters go out; absent where e-mail is off. */
  readonly mail?: Mail | undefined;
  /** Where members reach the server, for the links in letters. */
  readonly publicUrl?: string | undefined;
};

/** A command that must count once however often it is sent (ledger-notes 6.17). */
export type Once = {
  readonly key: string;
  readonly requestHash: string;
  readonly status: number;
  readonly present: (result: never) => unknown;
};

export type Context = Outside & { readonly actor: Actor; readonly once?: Once | undefined };
