import { drizzle } from 'drizzle-orm/postgres-js';
import postgres, { type Options, type PostgresType, type Sql } from 'postgres';

/**
 * One connection that is lent out for one transaction at a time. What is sent down it keeps its order, so statements may
 * follow each other without waiting for answers; a pool could give each of them to another connection.
 */
export type Line = {
  readonly sql: Sql;
  readonly madeAt: number;
  /** Connected, and used before: what is sent now can't be held up and find itself on another connection. */
  isWarm: boolean;
  /** The connection ended. The next statement would silently get a new one, so none is sent. */
  isLost: boolean;
};

export type Lines = {
  take(): Promise<Line>;
  give(line: Line): void;
  end(options?: { timeout?: number }): Promise<void>;
};

/**
 * A connection collects prepared statements, so its client is replaced from time to time, between two transactions. So is
 * one that lost its connection: it would connect again, but tell the next statement of what the last one died of.
 */
const MOST_MILLISECONDS = 30 * 60 * 1000;

/** Opens connections when they are wanted, `most` of them at most; whoever comes then waits in turn. */
export function openLines(url: string, options: Options<Record<string, PostgresType>>, most: number): Lines {
  const all = new Set<Line>();
  const free: Line[] = [];
  const waiting: ((line: Line) => void)[] = [];
  const make = (): Line => {
    const onclose = () => {
      line.isWarm = false;
      line.isLost = true;
    };
    const sql = postgres(url, { ...options, max: 1, max_lifetime: null, onclose });
    drizzle(sql); // takes over its date parsers, as for every client of the app
    const line: Line = { sql, madeAt: performance.now(), isWarm: false, isLost: false };
    all.add(line);
    return line;
  };
  const renew = (line: Line): Line => {
    if (!line.isLost && performance.now() - line.madeAt < MOST_MILLISECONDS) return line;
    all.delete(line);
    line.sql.end({ timeout: 5 }).catch(() => undefined);
    return make();
  };
  return {
    async take() {
      const kept = free.pop();
      if (kept) return renew(kept);
      return all.size < most ? make() : new Promise<Line>((resolve) => waiting.push(resolve));
    },
    give(line) {
      const next = waiting.shift();
      const kept = renew(line);
      if (next) next(kept);
      else free.push(kept);
    },
    async end(ending) {
      await Promise.all([...all].map((line) => line.sql.end(ending)));
    },
  };
}
