import { createHash, randomBytes } from 'node:crypto';
import { administer, writeArchive } from '@sheafbook/db';
import { importStorehouse, type LoginWish } from '../../apps/api/src/features/archive/use-cases.ts';
import type { TestApp } from './app.ts';

/** The lines of a storehouse's archive, the first being its head and the last its end. */
export async function archiveOf(app: TestApp, storehouseId: string): Promise<string[]> {
  const lines: string[] = [];
  const of = { storehouseId, takenAt: app.clock.now };
  await administer(app.adminUrl, (admin) =>
    writeArchive(admin, of, async (line) => {
      lines.push(line);
    }),
  );
  return lines;
}

export const COORDINATOR: LoginWish = { personName: null, email: 'ada@new.example.org' };

export function importInto(
  app: TestApp,
  lines: readonly string[],
  logins: readonly LoginWish[] = [COORDINATOR],
) {
  const outside = { db: app.db, sql: app.sql, now: () => app.clock.now, randomBytes };
  return importStorehouse(outside, { adminUrl: app.adminUrl, lines: inTurn(lines), logins });
}

async function* inTurn(lines: readonly string[]): AsyncGenerator<string> {
  yield* lines;
}

/** The lines with an end that fits them, as somebody would write it who knows the format. */
export function sealed(lines: readonly string[]): string[] {
  const kept = lines.slice(0, -1);
  const tables: Record<string, number> = {};
  for (const line of kept.slice(1)) {
    const { table } = JSON.parse(line);
    tables[table] = (tables[table] ?? 0) + 1;
  }
  const told = Object.keys(JSON.parse(lines.at(-1) ?? '{}').end.tables).map((name) => [name, 0] as const);
  const sha256 = createHash('sha256')
    .update(kept.map((line) => `${line}\n`).join(''))
    .digest('hex');
  return [...kept, JSON.stringify({ end: { tables: { ...Object.fromEntries(told), ...tables }, sha256 } })];
}

/** Changes the first row of a table that fits, and seals the archive again. */
export function changed(
  lines: readonly string[],
  table: string,
  // biome-ignore lint/suspicious/noExplicitAny: rows are of any table
  change: (row: any) => unknown,
  // biome-ignore lint/suspicious/noExplicitAny: rows are of any table
  fits: (row: any) => boolean = () => true,
): string[] {
  const position = lines.findIndex((line) => {
    const read = JSON.parse(line);
    return read.table === table && fits(read.row);
  });
  if (position < 0) throw new Error(`the archive has no such row of ${table}`);
  const { row } = JSON.parse(lines[position] ?? '');
  const text = JSON.stringify({ table, row: change(row) });
  return sealed(lines.map((line, at) => (at === position ? text : line)));
}
