import { randomBytes } from 'node:crypto';
import { foundStorehouse } from '../../apps/api/src/features/storehouse/use-cases.ts';
import { hashPassword } from '../../apps/api/src/platform/password.ts';
import { withLoginTx } from '../../apps/api/src/platform/with-tx.ts';
import { cookieOf, type TestApp } from './app.ts';
import { A_PASSWORD, type TestStorehouse } from './storehouse.ts';

/** A further storehouse on the same server, with a coordinator of its own. The first run makes only one. */
export async function anotherStorehouse(
  app: TestApp,
  name = 'Bell Lane Storehouse',
): Promise<TestStorehouse> {
  const email = `${name.toLowerCase().replaceAll(' ', '-')}@example.org`;
  const passwordHash = await hashPassword(A_PASSWORD);
  const outside = { db: app.db, sql: app.sql, now: () => app.clock.now, randomBytes };
  const [login] = await app.sql<{ login_id: string }[]>`
    select door.add_login(${email}, 'Bea Bell', ${passwordHash}, ${app.clock.now.toISOString()}) as login_id`;
  const loginId = login?.login_id ?? '';
  const storehouseId = await withLoginTx(outside, loginId, (tx) =>
    foundStorehouse(tx, outside, {
      facts: { name, currency: 'USD', timeZone: 'America/Chicago', massDisplay: 'lb', language: 'en' },
      loginId,
      personName: 'Bea Bell',
      householdName: 'Bell',
    }),
  );
  const signedIn = await app.as().post('/api/session', { email, password: A_PASSWORD });
  const coordinator = app.as(cookieOf(signedIn));
  return { storehouseId, path: `/api/storehouses/${storehouseId}`, coordinator };
}
