import { type Caller, cookieOf, type TestApp } from './app.ts';

export const A_PASSWORD = 'a long enough password';

/** A storehouse as its first run leaves it, seen by its coordinator. `path` leads every address inside it. */
export type TestStorehouse = { storehouseId: string; path: string; coordinator: Caller };

export async function aStorehouse(app: TestApp, name = 'Alder Row Storehouse'): Promise<TestStorehouse> {
  const answer = await app.as().post('/api/set-up', {
    email: 'coordinator@example.org',
    password: A_PASSWORD,
    personName: 'Ada Ashdown',
    householdName: 'Ashdown',
    storehouse: { name, currency: 'USD', timeZone: 'America/Chicago' },
  });
  if (answer.status !== 201) throw new Error(JSON.stringify(answer.body));
  const { storehouseId } = answer.body;
  return {
    storehouseId,
    path: `/api/storehouses/${storehouseId}`,
    coordinator: app.as(cookieOf(answer)),
  };
}
