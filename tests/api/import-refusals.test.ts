import { afterAll, beforeAll, expect, test } from 'vitest';
import { CELL_CODES } from '../../apps/api/src/features/import/sheet/messages.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { fingerprintOf } from '../support/fingerprint.ts';
import { aHousehold } from '../support/household.ts';
import { bringOver } from '../support/import.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp('2026-10-01T15:00:00Z');
  storehouse = await aStorehouse(app);
  const { caller, householdId } = await aHousehold(app, storehouse, 'Corran');
  bodyOf(await caller.post(`${storehouse.path}/households/${householdId}/leaving`, { version: 1 }));
  await aHousehold(app, storehouse, 'Birchall');
  const { foods } = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/foods?search=spelt`));
  const retirement = `${storehouse.path}/foods/${foods[0].id}/retirement`;
  bodyOf(await storehouse.coordinator.put(retirement, { version: foods[0].version, isRetired: true }));
  const opening = [{ name: 'o.csv', text: 'Account,Owes\nAshdown,41.20\n' }];
  const { persons } = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/persons`));
  await storehouse.coordinator.post(`${storehouse.path}/persons/${persons[0].id}/duties`, {
    duty: 'treasurer',
  });
  bodyOf((await bringOver(storehouse.coordinator, storehouse.path, opening)).posted, 201);
});
afterAll(() => app.close());

const EATERS = 'Household,Eater,Born,Sex,Allergies';
const STOCK = 'Owner,Food,Container,Count,Mass each,Stored';
const RICE = 'rice-white-long,pail-6-gallon-lined';

type Case = { code: string; head: string; row: string; at: string; read?: string; more?: object };
const CELLS: readonly Case[] = [
  { code: 'missing', head: EATERS, row: 'Ashdown,,2015,,', at: 'Eater' },
  { code: 'too-long', head: 'Household,Address', row: `Dell,${'x'.repeat(301)}`, at: 'Address' },
  { code: 'too-many-cells', head: 'Household,Person', row: 'Dell,Dora,Dell', at: 'Household' },
  { code: 'unreadable-byte', head: 'Household', row: 'D\x81ll', at: 'Household', read: 'D\uFFFDll' },
  {
    code: 'letter-lost',
    head: 'Household',
    row: 'D\u00EF\u00BF\u00BDll',
    at: 'Household',
    read: 'D\uFFFDll',
  },
  { code: 'not-whole', head: STOCK, row: `Ashdown,${RICE},501,1 kg,2024`, at: 'Count' },
  { code: 'not-a-choice', head: EATERS, row: 'Ashdown,Ida,2015,person,', at: 'Sex' },
  { code: 'not-a-choice', head: EATERS, row: 'Ashdown,Ida,2015,,dust', at: 'Allergies' },
  { code: 'not-a-number', head: 'Account,Owes', row: 'Ashdown,forty', at: 'Owes' },
  { code: 'not-a-number', head: STOCK, row: `Ashdown,${RICE},1,a sack,2024`, at: 'Mass each' },
  { code: 'ambiguous-number', head: 'Account,Owes', row: 'Ashdown,1.250', at: 'Owes' },
  { code: 'ambiguous-number', head: STOCK, row: `Ashdown,${RICE},1,1.250 kg,2024`, at: 'Mass each' },
  { code: 'negative', head: 'Equipment,Value', row: 'Mill,-5.00', at: 'Value' },
  { code: 'negative', head: 'Account,Holds', row: 'cash,-5.00', at: 'Holds' },
  { code: 'negative', head: STOCK, row: `Ashdown,${RICE},1,-1 kg,2024`, at: 'Mass each' },
  { code: 'zero', head: STOCK, row: `Ashdown,${RICE},1,0 kg,2024`, at: 'Mass each' },
  { code: 'too-fine', head: 'Account,Owes', row: 'Ashdown,1.2345', at: 'Owes' },
  { code: 'too-large', head: 'Account,Owes', row: 'Ashdown,90071992547409.92', at: 'Owes' },
  { code: 'too-large', head: STOCK, row: `Ashdown,${RICE},1,1001000 kg,2024`, at: 'Mass each' },
  { code: 'other-currency', head: 'Account,Owes', row: 'Ashdown,€12', at: 'Owes' },
  { code: 'unknown-unit', head: STOCK, row: `Ashdown,${RICE},1,3 pints,2024`, at: 'Mass each' },
  { code: 'unit-missing', head: STOCK, row: `Ashdown,${RICE},1,15,2024`, at: 'Mass each' },
  { code: 'not-a-day', head: EATERS, row: 'Ashdown,Ida,last May,,', at: 'Born' },
  { code: 'no-such-day', head: EATERS, row: 'Ashdown,Ida,2015-02-30,,', at: 'Born' },
  { code: 'no-such-day', head: EATERS, row: 'Ashdown,Ida,1899,,', at: 'Born' },
  { code: 'short-year', head: EATERS, row: 'Ashdown,Ida,1/3/15,,', at: 'Born' },
  { code: 'ambiguous-day', head: EATERS, row: 'Ashdown,Ida,03/04/2015,,', at: 'Born' },
  { code: 'day-to-come', head: STOCK, row: `Ashdown,${RICE},1,1 kg,2026-11`, at: 'Stored' },
  { code: 'twice-in-file', head: 'Household', row: 'Dell\ndell', at: 'Household', read: 'dell' },
  { code: 'not-a-phone', head: 'Household,Phone', row: 'Dell,ask Fay', at: 'Phone' },
  { code: 'not-an-email', head: 'Household,E-mail', row: 'Dell,dora at example', at: 'E-mail' },
  { code: 'seat-name', head: 'Household', row: 'Seat 9', at: 'Household' },
  { code: 'no-such-household', head: EATERS, row: 'Nobody,Ida,2015,,', at: 'Household' },
  { code: 'no-such-household', head: STOCK, row: `Nobody,${RICE},1,1 kg,2024`, at: 'Owner' },
  { code: 'household-has-left', head: EATERS, row: 'Seat 2,Ida,2015,,', at: 'Household' },
  { code: 'no-such-food', head: STOCK, row: 'Ashdown,old wheat,pail-6-gallon-lined,1,1 kg,2024', at: 'Food' },
  { code: 'food-retired', head: STOCK, row: 'Ashdown,spelt,pail-6-gallon-lined,1,1 kg,2024', at: 'Food' },
  { code: 'no-such-kind', head: STOCK, row: 'Ashdown,rice-white-long,barrel,1,1 kg,2024', at: 'Container' },
  { code: 'no-such-account', head: 'Account,Owes', row: 'Hill Mill,2.00', at: 'Account' },
  { code: 'one-amount', head: 'Account,Owes,In credit', row: 'Ashdown,,', at: 'Owes' },
  { code: 'one-amount', head: 'Account,In credit,Owes', row: 'Birchall,1.00,2.00', at: 'Owes' },
  { code: 'wrong-side', head: 'Account,Owes', row: 'bank,5.00', at: 'Owes' },
  { code: 'wrong-side', head: 'Account,Holds', row: 'Birchall,5.00', at: 'Holds' },
  { code: 'opened-before', head: 'Account,Owes', row: 'Ashdown,50.00', at: 'Owes' },
  {
    code: 'over-capacity',
    head: STOCK,
    row: 'Ashdown,rice-white-long,can-no-10,1,50 kg,2024',
    at: 'Mass each',
  },
  {
    ...{ code: 'code-shape', head: 'Food,Code,Group,Allergens,Gluten,Source', at: 'Code' },
    row: 'Emmer,Red Emmer!,grains,wheat,yes,the sack',
  },
];

/** Latin letters stand for their own bytes, so that a case can hold bytes that are no letters. */
const bytesOf = (text: string) => {
  const isBytes = [...text].every((letter) => letter <= '\u00FF');
  return Buffer.from(text, isBytes ? 'latin1' : 'utf8').toString('base64');
};

test.for(CELLS)('$code is told at its cell, under “$at”, and nothing is written', async (wrong) => {
  const { code, head, row, at } = wrong;
  const { tables: _, ...before } = await fingerprintOf(app);
  const files = [{ name: 'x.csv', base64: bytesOf(`${head}\n${row}\n`) }];
  const { body } = await storehouse.coordinator.post(`${storehouse.path}/import-trials`, { files });
  expect(body.files[0].problems).toEqual([]);
  const lastRow = row.split('\n');
  const cells = lastRow.at(-1)?.split(',') ?? [];
  const read = wrong.read ?? cells[head.split(',').indexOf(at)];
  const told = body.files[0].rows.flatMap(({ row: no, problems }: { row: number; problems: object[] }) =>
    problems.map((problem) => ({ no, ...problem })),
  );
  expect(told).toEqual([
    {
      no: lastRow.length + 1,
      column: expect.any(String),
      heading: at,
      read,
      code,
      message: expect.any(String),
    },
  ]);
  expect(told[0].message).not.toBe(code);
  expect([body.isPossible, body.seen]).toEqual([false, null]);
  const { tables: _after, ...after } = await fingerprintOf(app);
  expect(after).toEqual(before);
});

test('of everything that can be wrong with a cell nothing is left out above', () => {
  expect([...new Set(CELLS.map(({ code }) => code))].toSorted()).toEqual([...CELL_CODES].toSorted());
});

test.for([
  { code: 'heading-twice', text: 'Household,Family\nDell,Dell\n', heading: 'Family' },
  { code: 'unknown-heading', text: 'Household,Shoe size\nDell,9\n', heading: 'Shoe size' },
  { code: 'column-missing', text: 'Eater,Born\nIda,2015\n', heading: 'Household', kind: 'eaters' },
  { code: 'too-many-rows', text: `Household\n${'Dell\n'.repeat(5001)}` },
])('$code is told at its heading', async ({ code, text, heading, ...more }) => {
  const files = [{ name: 'x.csv', base64: bytesOf(text), ...more }];
  const { body } = await storehouse.coordinator.post(`${storehouse.path}/import-trials`, { files });
  expect(body.files[0].problems).toEqual([{ code, message: expect.any(String), heading: heading ?? null }]);
  expect([body.isPossible, body.seen, body.files[0].rows]).toEqual([false, null, []]);
});
