import { randomBytes } from 'node:crypto';
import { parseArgs } from 'node:util';
import { openDatabase, StartRefusal } from '@sheafbook/db';
import { auditEverything } from './audit-everything.ts';

/** `npm run audit`, or with `-- --json`: exits with 0 if every invariant holds, 1 if one fails, 2 if it can't look. */
async function run(): Promise<number> {
  const { json } = parseArgs({ options: { json: { type: 'boolean', default: false } } }).values;
  const database = await openDatabase({
    env: process.env,
    dataFolder: process.env.SHEAFBOOK_DATA ?? '.sheafbook',
    log: console.error,
  });
  try {
    const outside = { db: database.db, sql: database.sql, now: () => new Date(), randomBytes };
    const audits = await auditEverything(outside, database.adminUrl);
    console.log(json ? JSON.stringify(audits.json, null, 2) : audits.text);
    return audits.holds ? 0 : 1;
  } finally {
    await database.close();
  }
}

process.exitCode = await run().catch((error: unknown) => {
  console.error(isToldInWords(error) ? error.message : error);
  return 2;
});

/** A mistake of whoever runs the command: a server that can't be used, or an option that is not there. */
function isToldInWords(error: unknown): error is Error {
  if (error instanceof StartRefusal) return true;
  return error instanceof Error && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS');
}
