import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { booksOf } from '../support/books-text.ts';
import { aSupplier, bodyOf } from '../support/buy.ts';
import { aHousehold } from '../support/household.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());

const add = (body: unknown) => storehouse.coordinator.post(`${storehouse.path}/suppliers`, body);
const edit = (id: string, body: unknown) =>
  storehouse.coordinator.put(`${storehouse.path}/suppliers/${id}`, body);

test('a supplier is added, found by name and changed by who read it last', async () => {
  const mill = bodyOf(await add({ name: ' Heron Mill ', contact: 'Tel. 555 0147' }), 201);
  expect(mill).toMatchObject({ name: 'Heron Mill', contact: 'Tel. 555 0147', version: 1 });
  const edited = bodyOf(await edit(mill.id, { version: 1, name: 'Heron Creek Mill', contact: '' }));
  expect(edited).toMatchObject({ name: 'Heron Creek Mill', version: 2 });
  expect(bodyOf(await storehouse.coordinator.get(`${storehouse.path}/suppliers/${mill.id}`))).toEqual(edited);
  const stale = await edit(mill.id, { version: 1, name: 'Heron', contact: '' });
  expect([stale.status, stale.body.code, stale.body.newer]).toEqual([409, 'stale-version', edited]);
});

test('two suppliers never share a name, however it is tried', async () => {
  await aSupplier(storehouse, 'Grange');
  const otherId = await aSupplier(storehouse, 'Granary');
  const before = await booksOf(app);
  const again = await add({ name: 'Grange' });
  expect([again.status, again.body.code, again.body.fields[0].field]).toEqual([409, 'already-there', 'name']);
  const renamed = await edit(otherId, { version: 1, name: 'Grange', contact: '' });
  expect(renamed.body.code).toBe('already-there');
  expect(await booksOf(app)).toBe(before);
  const racing = await Promise.all(Array.from({ length: 6 }, () => add({ name: 'Raced Mill' })));
  expect(racing.map(({ status }) => status).toSorted()).toEqual([201, 409, 409, 409, 409, 409]);
});

test.for([
  { field: 'name', body: {} },
  { field: 'name', body: { name: '  ' } },
  { field: 'name', body: { name: 'm'.repeat(121) } },
  { field: 'contact', body: { name: 'Mill', contact: 'c'.repeat(501) } },
  { field: 'balance', body: { name: 'Mill', balance: 5 } },
])('a supplier is refused at $field', async ({ field, body }) => {
  const before = await booksOf(app);
  const answer = await add(body);
  expect([answer.status, answer.body.code, answer.body.fields[0].field]).toEqual([
    400,
    'invalid-input',
    field,
  ]);
  expect(await booksOf(app)).toBe(before);
});

test('pages and CSV hold each supplier once', async () => {
  const own = `${storehouse.path}/suppliers`;
  const first = bodyOf(await storehouse.coordinator.get(`${own}?limit=1`));
  const second = bodyOf(
    await storehouse.coordinator.get(`${own}?limit=1&after=${encodeURIComponent(first.next)}`),
  );
  expect(second.suppliers[0].name > first.suppliers[0].name).toBe(true);
  await aSupplier(storehouse, '=cmd()');
  const csv = await storehouse.coordinator.get(`${own}?format=csv`);
  expect(csv.body).toContain("'=cmd()"); // a spreadsheet must not run a name
});

test('a treasurer may add a carrier, a member may not; another storehouse finds nothing', async () => {
  const { caller: treasurer } = await aHousehold(app, storehouse, 'Birchall', { duties: ['treasurer'] });
  expect((await treasurer.post(`${storehouse.path}/suppliers`, { name: 'Ridge Haulage' })).status).toBe(201);
  const { caller: member } = await aHousehold(app, storehouse, 'Corran');
  const refused = await member.post(`${storehouse.path}/suppliers`, { name: 'Own Mill' });
  expect([refused.status, refused.body.code]).toEqual([403, 'duty-missing']);
  const other = await anotherStorehouse(app);
  const supplierId = await aSupplier(storehouse, 'Hidden Mill');
  const elsewhere = await other.coordinator.get(`${other.path}/suppliers/${supplierId}`);
  expect([elsewhere.status, elsewhere.body.code]).toEqual([404, 'thing-not-found']);
  expect((await other.coordinator.post(`${other.path}/suppliers`, { name: 'Hidden Mill' })).status).toBe(201);
});
