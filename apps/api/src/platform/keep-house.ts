import { sql } from 'drizzle-orm';
import type { Logger } from 'pino';
import type { Outside } from './context.ts';
import { logFailure } from './log.ts';
import { openSessions } from './session.ts';

/** Once a day: kept answers, old looks into private things and ended sessions go. A failure waits for tomorrow. */
export async function keepHouse(outside: Outside, log: Logger): Promise<void> {
  try {
    await outside.db.execute(sql`select book.keep_house(${outside.now().toISOString()}::timestamptz)`);
    await openSessions(outside).endExpired();
  } catch (error) {
    logFailure(log, 'keep-house', error);
  }
}
