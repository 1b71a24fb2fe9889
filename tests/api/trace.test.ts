import { createHash } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { bringOver } from '../support/import.ts';
import { aSharedBuy, creditClaims, type TestSharedBuy } from '../support/shared-buy.ts';
import { shelvesOf, wheatOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

type Kind = 'bag' | 'container' | 'entry';
type Step = { way: string; place: string; owner: string; ownerName: string | null; grams: number };
type Trace = {
  kind: Kind;
  code: string;
  addsUp: boolean | null;
  isCommon: boolean;
  inGrams: number;
  outGrams: number | null;
  steps: Step[];
  bags: { bagCode: string; arrivedOn: string; grams: number }[];
  entry: { entryNo: number; what: string; movements: { amount: number }[] } | null;
};

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let reviewer: TestHousehold;
const cans: { id: string; code: string }[] = [];
let bagOfCans: string;
const at = (path: string) => `${storehouse.path}${path}`;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  reviewer = await aHousehold(app, storehouse, 'Quill', { duties: ['reviewer'] });
  buy = await aSharedBuy(app, storehouse);
  await creditClaims(storehouse, buy);
  const shelves = await shelvesOf(app, storehouse);
  const wheat = await wheatOf(storehouse, buy, buy.households.Ashdown);
  bagOfCans = wheat.bagCode;
  for (const gramsEach of [1200, 900])
    cans.push(await shelves.aCan(buy.households.Ashdown.caller, wheat, gramsEach));
  // A pail of common stock, and a can that Dell brought itself and that is nobody else's business.
  const text =
    'Owner,Food,Container,Count,Mass each,Stored,Origin\ncommon,rice-white-long,pail-6-gallon-lined,1,33 lb,12 Oct 2025,a farm shop\nDell,rice-white-long,can-no-10,1,1 kg,2025,\n';
  const { posted } = await bringOver(storehouse.coordinator, storehouse.path, [{ name: 'stock.csv', text }]);
  expect(posted.status).toBe(201);
});
afterAll(() => app.close());

const draw = async (seed: string, caller = reviewer.caller) =>
  bodyOf(await caller.get(at(`/traces?seed=${encodeURIComponent(seed)}`))) as {
    traces: Trace[];
    candidates: number;
  };
const codesOf = ({ traces }: { traces: Trace[] }, kind: Kind) =>
  traces.filter((trace) => trace.kind === kind).map(({ code }) => code);
const smallest = (seed: string, codes: readonly string[]) =>
  codes
    .map((code) => [createHash('sha256').update(`${seed}\n${code}`).digest('hex'), code] as const)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, code]) => code);

/** The sample that holds a code, by the first seed of many that draws it. */
async function traceOf(code: string): Promise<Trace> {
  for (let nth = 0; nth < 60; nth += 1) {
    const found = (await draw(`seed ${nth}`)).traces.find((trace) => trace.code === code);
    if (found) return found;
  }
  throw new Error(`${code} was never drawn`);
}

test('a seed draws the same bags, containers and entries for everybody, by a rule that anyone can carry out again', async () => {
  const seed = '2026, Quill and Ashdown';
  const drawn = await draw(seed);
  const bags = await app.admin<{ code: string }[]>`select bag_code as code from book.bag
    where decision <> 'refused'`;
  const entries = await app.admin<
    { code: string }[]
  >`select distinct '#' || e.entry_no as code from book.entry e
    join book.movement m using (storehouse_id, entry_id)
    join book.account a on a.account_id = m.source_id and a.unit_kind = 'currency'`;
  const [pail] = await app.admin<{ code: string }[]>`select container_code as code from book.container
    where household_id is null`;
  const containers = [...cans.map(({ code }) => code), pail?.code ?? ''];
  const listOf = (rows: readonly { code: string }[]) => rows.map(({ code }) => code);
  expect(codesOf(drawn, 'bag')).toEqual(smallest(seed, listOf(bags)).slice(0, 4));
  expect(codesOf(drawn, 'container')).toEqual(smallest(seed, containers));
  expect(codesOf(drawn, 'entry')).toEqual(smallest(seed, listOf(entries)).slice(0, 3));
  expect(drawn.candidates).toBe(bags.length + containers.length + entries.length);
  expect(await draw(seed, buy.treasurer)).toEqual(drawn);
  expect(codesOf(await draw('another'), 'bag')).not.toEqual(codesOf(drawn, 'bag'));
});

test('a bag goes from its supplier to whoever has it, and every gram adds up', async () => {
  const { traces } = await draw('grams');
  const bags = traces.filter(({ kind }) => kind === 'bag');
  expect(bags).toHaveLength(4);
  for (const { addsUp, inGrams, steps, code } of bags) {
    expect({ code, addsUp }).toEqual({ code, addsUp: true });
    expect(steps.some(({ way, place }) => way === 'in' && place === 'supplier')).toBe(true);
    const [row] = await app.admin<
      { grams: string }[]
    >`select net_grams as grams from book.bag where bag_code = ${code}`;
    expect(inGrams).toBeGreaterThanOrEqual(Number(row?.grams));
  }
});

test('a household’s container leads back to bag, lot and delivery, and tells neither whose it is nor what became of it', async () => {
  const [can] = cans;
  const [buyOf] = await app.admin<
    { buy: string; supplier: string }[]
  >`select b.name as buy, s.name as supplier
    from book.buy b join book.supplier s on s.supplier_id = ${buy.supplierId} where b.buy_id = ${buy.buyId}`;
  const before = await traceOf(can?.code ?? '');
  expect(before).toMatchObject({
    ...{ isCommon: false, supplier: buyOf?.supplier, buy: buyOf?.buy, inGrams: 1200, addsUp: null },
    bags: [{ bagCode: bagOfCans, arrivedOn: '2026-09-01', grams: 1200 }],
    steps: [{ way: 'in', place: 'bag', owner: 'household', ownerName: null, grams: 1200 }],
  });
  const use = { to: 'eaten', grams: 500 };
  bodyOf(await buy.households.Ashdown.caller.post(at(`/containers/${can?.id}/uses`), use), 201);
  expect(await traceOf(can?.code ?? '')).toEqual(before);
  const text = JSON.stringify(before);
  for (const secret of ['Ashdown', buy.households.Ashdown.householdId]) expect(text).not.toContain(secret);
  const { householdId, caller } = buy.households.Ashdown;
  const { privateReads } = bodyOf(await caller.get(at(`/households/${householdId}/private-reads?limit=100`)));
  expect(privateReads).toContainEqual(
    expect.objectContaining({ what: 'containers', purpose: 'traces of a review' }),
  );
});

test('a container of common stock that an import brought names the import, and adds up; Dell’s own can is never drawn', async () => {
  const [pail] = await app.admin<{ code: string }[]>`select container_code as code from book.container
    where household_id is null`;
  expect(await traceOf(pail?.code ?? '')).toMatchObject({
    ...{ isCommon: true, importNo: 1, buy: null, bags: [], inGrams: 14_969, leftGrams: 14_969, addsUp: true },
    originNote: expect.stringContaining('a farm shop'),
  });
  const [own] = await app.admin<{ code: string }[]>`select container_code as code from book.container
    where household_id = ${buy.households.Dell.householdId}`;
  for (let nth = 0; nth < 20; nth += 1)
    expect(codesOf(await draw(`seed ${nth}`), 'container')).not.toContain(own?.code);
});

test('an entry of money shows its movements, cause, who wrote it and what undid it, to treasurer and reviewer alone', async () => {
  const charge = { minorUnits: 450, note: 'two transfers' };
  const { entryId, entryNo } = bodyOf(await buy.treasurer.post(at('/bank-charges'), charge), 201);
  const reversal = await buy.treasurer.post(at(`/entries/${entryId}/reversal`), { reason: 'Posted twice.' });
  const undoing = bodyOf(reversal, 201).entryNo;
  const { entry } = await traceOf(`#${entryNo}`);
  expect(entry).toMatchObject({
    ...{
      what: 'bank-charge',
      note: 'two transfers',
      enteredBy: 'Birchall Person',
      reversedByEntryNo: undoing,
    },
    movements: [{ amount: 450, to: { number: '5010' }, from: { number: '1000' } }],
  });
  const undone = await traceOf(`#${undoing}`);
  expect(undone.entry).toMatchObject({ what: 'reversal', note: 'Posted twice.', reversesEntryNo: entryNo });
  const shown = await draw('for all');
  const coordinator = await draw('for all', storehouse.coordinator);
  expect(coordinator.traces.map(({ code }) => code)).toEqual(shown.traces.map(({ code }) => code));
  const hidden = coordinator.traces.filter(({ kind }) => kind === 'entry');
  expect(hidden.map(({ entry }) => entry)).toEqual([null, null, null]);
});

test('the sample as a spreadsheet has a row for each step and each movement', async () => {
  const { traces } = await draw('rows');
  const { body } = await reviewer.caller.get(at('/traces?seed=rows&format=csv'));
  const steps = traces.reduce((sum, { steps, entry }) => sum + (steps ?? entry?.movements ?? []).length, 0);
  expect((body as string).trimEnd().split('\r\n')).toHaveLength(1 + steps);
});

test('a draw needs a seed and a duty', async () => {
  expect((await buy.households.Dell.caller.get(at('/traces?seed=x'))).body.code).toBe('duty-missing');
  expect((await reviewer.caller.get(at('/traces?seed='))).body.fields[0].field).toBe('seed');
});
