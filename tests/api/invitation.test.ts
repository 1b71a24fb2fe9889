import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());

test('a household joins by a link and is a member at once', async () => {
  const birchall = await aHousehold(app, storehouse, 'Birchall', { duties: ['packing_lead'] });
  const me = await birchall.caller.get('/api/session');
  expect(me.body.storehouses).toMatchObject([{ storehouseId: storehouse.storehouseId }]);
});
