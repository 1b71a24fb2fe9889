import { randomBytes } from 'node:crypto';
import { createReadStream, existsSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { openDatabase, refuseUnless, StartRefusal, splitLines } from '@sheafbook/db';
import { z } from 'zod';
import { importStorehouse, type LoginWish } from './features/archive/use-cases.ts';
import { email } from './features/session/schema.ts';

// `npm run import -- archive.jsonl --coordinator-email ada@example.org [--login 'Ben Birchall=ben@example.org' …]`
try {
  const { file, logins } = readArguments();
  const database = await openDatabase({
    env: process.env,
    dataFolder: process.env.SHEAFBOOK_DATA ?? '.sheafbook',
    log: console.error,
  });
  try {
    const outside = { db: database.db, sql: database.sql, now: () => new Date(), randomBytes };
    const lines = splitLines(createReadStream(file, 'utf8'));
    report(await importStorehouse(outside, { adminUrl: database.adminUrl, lines, logins }));
  } finally {
    await database.close();
  }
} catch (error) {
  console.error(told(error));
  process.exitCode = 1;
}

function readArguments(): { file: string; logins: LoginWish[] } {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      'coordinator-email': { type: 'string' },
      login: { type: 'string', multiple: true, default: [] },
    },
  });
  const [file] = positionals;
  refuseUnless(file !== undefined && positionals.length === 1, 'Say which file to import, and one only.');
  const coordinator = values['coordinator-email'];
  const named = values.login.map((text) => {
    const [personName = '', address = ''] = text.split('=');
    refuseUnless(personName !== '' && address !== '', `--login reads 'Name=email', not ${text}`);
    return { personName, email: email.parse(address) };
  });
  const first = coordinator === undefined ? [] : [{ personName: null, email: email.parse(coordinator) }];
  refuseUnless(existsSync(file), `There is no file ${file}.`);
  return { file, logins: [...first, ...named] };
}

function report({ head, tables, verified }: Awaited<ReturnType<typeof importStorehouse>>): void {
  const { audit, logins } = verified;
  const rows = Object.values(tables).reduce((sum, count) => sum + count, 0);
  console.log(`${head.storehouse.name} (${head.storehouse.id}), as of ${head.takenAt}: ${rows} rows.`);
  const { entries, movements } = audit.ledger;
  console.log(
    `${entries} entries and ${movements} movements add up; all ${audit.findings.length} invariants hold.`,
  );
  for (const { personName, email: address, password } of logins)
    console.log(
      password === null
        ? `${personName} signs in as ${address}, with the password of that login here.`
        : `${personName} signs in as ${address} with ${password} — shown this once; change it after signing in.`,
    );
  console.log('Everybody else needs an invitation from the coordinator; open ones were withdrawn.');
}

function told(error: unknown): unknown {
  if (error instanceof StartRefusal) return error.message;
  if (error instanceof z.ZodError) return z.prettifyError(error);
  const isOfUse =
    error instanceof Error && 'code' in error && ['ENOENT', 'EACCES', 'EISDIR'].includes(String(error.code));
  const isUsage =
    error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS');
  return isOfUse || isUsage ? error.message : error;
}
