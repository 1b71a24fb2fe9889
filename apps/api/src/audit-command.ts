import { randomBytes } from 'node:crypto';
import { parseArgs } from 'node:util';
import { openDatabase } from '@sheafbook/db';
import { auditEverything } from './audit-everything.ts';

// `npm run audit`, or with `-- --json`: tests every invariant of every storehouse, and exits with 1 if any fails.
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
  process.exitCode = audits.holds ? 0 : 1;
} finally {
  await database.close();
}
