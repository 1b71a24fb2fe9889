import type { Tx } from '@sheafbook/db';
import { assert } from '@sheafbook/units';
import { sql } from 'drizzle-orm';

export type LoginRow = { login_id: string; email: string; name: string; password_hash: string };

export async function findLoginByEmail(tx: Tx, email: string): Promise<LoginRow | undefined> {
  const [row] = await tx.execute<LoginRow>(sql`select * from door.find_login_by_email(${email})`);
  return row;
}

export async function hasLogins(tx: Tx): Promise<boolean> {
  const [row] = await tx.execute<{ has: boolean }>(sql`select door.has_logins() as has`);
  return row?.has ?? false;
}

export async function insertLogin(
  tx: Tx,
  login: { email: string; name: string; passwordHash: string; madeAt: Date },
): Promise<string> {
  const { email, name, passwordHash, madeAt } = login;
  const [row] = await tx.execute<{ login_id: string }>(
    sql`select door.add_login(${email}, ${name}, ${passwordHash}, ${madeAt.toISOString()}) as login_id`,
  );
  assert(row, 'add_login returns one row');
  return row.login_id;
}

export async function updatePassword(tx: Tx, loginId: string, passwordHash: string): Promise<void> {
  await tx.execute(sql`select door.change_password(${loginId}, ${passwordHash})`);
}

/** Notes an attempt and counts those since, this one included. */
export async function countAttempt(tx: Tx, key: string, window: { at: Date; since: Date }): Promise<number> {
  const [row] = await tx.execute<{ count: number }>(
    sql`select door.note_attempt(${key}, ${window.at.toISOString()}, ${window.since.toISOString()}) as count`,
  );
  return row?.count ?? 1;
}

export async function forgetAttempts(tx: Tx, key: string): Promise<void> {
  await tx.execute(sql`select door.forget_attempts(${key})`);
}
