import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import type { GrainHouseholds } from '../support/fixed-buy.ts';
import { aPackingLead } from '../support/landed-buy.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { type Shelves, shelvesOf, type TestCan, type TestPiece, wheatOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let shelves: Shelves;
let packingLead: Caller;
let bag: TestPiece;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse);
  shelves = await shelvesOf(app, storehouse);
  packingLead = (await aPackingLead(app, storehouse, buy.households.Corran)).caller;
  bag = await wheatOf(storehouse, buy, buy.households.Dell);
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
type Notice = { kind: string; words: string; isSafety: boolean };
/** What the households were told of holds and releases, the newest first; those that were told nothing are left out. */
async function told(kind: 'held' | 'released', headers = {}): Promise<Record<string, string[]>> {
  const words: Record<string, string[]> = {};
  for (const name of Object.keys(buy.households) as (keyof GrainHouseholds)[]) {
    const { notices } = bodyOf(await buy.households[name].caller.get(at('/notices'), headers));
    const own = notices.filter((notice: Notice) => notice.kind === kind);
    if (kind === 'held') expect(own.every(({ isSafety }: Notice) => isSafety)).toBe(true);
    if (own.length > 0) words[name] = own.map((notice: Notice) => notice.words);
  }
  return words;
}
const ownersOf = async (bagId: string): Promise<string[]> => {
  const rows = await app.admin<{ name: string }[]>`select distinct h.name from book.account a
    join book.household h on h.household_id = a.owner_id
    where a.vessel_id = ${bagId} and a.kind = 'mass' and a.inflow > a.outflow order by 1`;
  return rows.map(({ name }) => name);
};
const canOf = (grams: number): Promise<TestCan> => shelves.aCan(buy.households.Dell.caller, bag, grams);

test('who poured all of its share away from the bag hears of the hold by the codes of its containers', async () => {
  const cans: TestCan[] = [];
  for (let left = bag.grams; left > 0; left -= 2000) cans.push(await canOf(Math.min(left, 2000)));
  const owners = await ownersOf(bag.bagId);
  expect(owners).not.toContain('Dell');
  bodyOf(await packingLead.post(at(`/bags/${bag.bagId}/holds`), { reason: 'A smell of mice' }), 201);
  const codes = cans.map(({ code }) => code).toSorted();
  const words = await told('held');
  expect(words.Dell).toEqual([
    `Bag ${bag.bagCode} is on hold: A smell of mice. You have food of the same lot in ${codes.join(', ')}. Do not eat any of it, open it or give it away until you hear more.`,
  ]);
  for (const name of owners) expect(words[name]).toHaveLength(1);
  for (const [name, said] of Object.entries(words))
    if (name !== 'Dell') for (const code of codes) expect(said.join(' ')).not.toContain(code);
  const spanish = (await told('held', { 'Accept-Language': 'es' })).Dell;
  expect(spanish).toEqual([
    `El saco ${bag.bagCode} está retenido: A smell of mice. Usted tiene alimento del mismo lote en ${codes.join(', ')}. No coma nada de ello, no lo abra ni lo dé hasta saber más.`,
  ]);
});

test('who has some in the bag and some of its lot in containers hears of both in one notice', async () => {
  const [hold] = bodyOf(await packingLead.get(at('/holds?open=true'))).holds;
  bodyOf(await packingLead.post(at(`/holds/${hold.id}/release-request`), { finding: 'Clean' }));
  bodyOf(await storehouse.coordinator.post(at(`/holds/${hold.id}/release`)));
  const other = await wheatOf(storehouse, buy, buy.households.Ashdown);
  const can = await shelves.aCan(buy.households.Ashdown.caller, other);
  bodyOf(await packingLead.post(at(`/bags/${other.bagId}/holds`), { reason: 'Damp' }), 201);
  const [newest] = (await told('held')).Ashdown ?? [];
  expect(newest).toBe(
    `Bag ${other.bagCode}, in which you have food, is on hold: Damp. You have more of the same lot in ${can.code}. Do not eat any of it, open it or give it away until you hear more.`,
  );
});

test('the release is told to whoever was told of the hold, also when nothing is left there', async () => {
  const { Dell } = buy.households;
  const before = (await told('released')).Dell ?? [];
  expect(before).toEqual([`Bag ${bag.bagCode} is released: Clean. What you have of it may be used again.`]);
  const { containers } = bodyOf(await Dell.caller.get(at('/containers')));
  await app.admin`update book.account set outflow = inflow where vessel_id in ${app.admin(
    containers.map(({ id }: { id: string }) => id),
  )}`;
  const [hold] = bodyOf(await packingLead.get(at('/holds?open=true'))).holds;
  bodyOf(await packingLead.post(at(`/holds/${hold.id}/release-request`), { finding: 'Dry inside' }));
  bodyOf(await storehouse.coordinator.post(at(`/holds/${hold.id}/release`)));
  expect((await told('released')).Dell?.[0]).toContain('is released: Dry inside.');
});
