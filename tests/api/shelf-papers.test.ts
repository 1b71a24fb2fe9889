import { roughSpan, spellCode } from '@sheafbook/units';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { stockOf } from '../support/kitchen.ts';
import { partsOf, pdfOf, printed, readStructure } from '../support/pdf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let dell: TestHousehold;
let cans: { id: string; code: string }[];
let pail: { id: string; code: string };
beforeAll(async () => {
  app = await openTestApp(); // 1 September 2026
  storehouse = await aStorehouse(app);
  dell = await aHousehold(app, storehouse, 'Dell');
  const stock = await stockOf(storehouse, dell);
  cans = await stock.bringIn({ count: 30, packedOn: '2026-01-15', treatment: 'oxygen-absorber' });
  pail = await stock.bringCan({ kind: 'pail-6-gallon-bare', gramsEach: 15_000, packedOn: '2025-12-01' });
  const facts = { of: 'household', name: 'Cellar', kind: 'cellar', isLit: false, isDamp: false };
  const cellar = bodyOf(await dell.caller.post(at('/places'), { ...facts, isRodentProof: true }), 201);
  const containerIds = cans.map(({ id }) => id);
  const move = { containerIds, placeId: cellar.id, movedOn: '2026-02-01' };
  bodyOf(await dell.caller.post(at('/container-moves'), move), 201);
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const shelfList = (query = 'language=en') => printed(dell.caller, at(`/shelf/papers/list?${query}`));
const eatFirst = (query = 'language=en') => printed(dell.caller, at(`/shelf/papers/eat-first?${query}`));

test('a shelf list has every container once under its place, with both units, its years and room for the count', async () => {
  const { text } = await shelfList();
  for (const { code } of [...cans, pail]) expect(text.split(spellCode(code)).length - 1).toBe(1);
  // 30 × 2,400 g and 15,000 g are 87,000 g: 191.8 lb and 87.0 kg.
  for (const stands of ['31 containers hold', '191.8 lb · 87.0 kg', 'as of 1 Sept 2026.', 'Counted'])
    expect(text).toContain(stands);
  const placed = (code: string | undefined) => text.indexOf(spellCode(code ?? ''));
  expect(text.indexOf('Cellar')).toBeLessThan(placed(cans[0]?.code));
  expect(placed(cans.at(-1)?.code)).toBeLessThan(text.indexOf('Nobody said where'));
  expect(text.indexOf('Nobody said where')).toBeLessThan(placed(pail.code));
  const { keeping } = bodyOf(await dell.caller.get(at(`/containers/${pail.id}/keeping`)));
  expect(text).toContain(`about ${keeping.eatFirstYear}`);
  expect(text).toContain(`${keeping.soonestYear} to ${keeping.latestYear}`);
});

test('an eat-first list goes by what ends first, not by what was packed first, and says how long in words', async () => {
  const { text } = await eatFirst();
  const { queue } = bodyOf(await dell.caller.get(at('/rotation')));
  expect(queue[0].container.code).toBe(pail.code); // bare and nowhere known; the cans are sealed and stand cool
  const places = queue.map(({ container }: { container: { code: string } }) =>
    text.indexOf(spellCode(container.code)),
  );
  expect(places).toEqual(places.toSorted((a: number, b: number) => a - b));
  expect(places.every((place: number) => place >= 0)).toBe(true);
  const { count, unit } = roughSpan(queue[0].daysLeft);
  expect(unit).toBe('month');
  expect(text).toContain(`${count} months`);
});

test('both are read in Spanish, on Letter and in large, and each table has its heads and all its cells', async () => {
  const large = await shelfList('language=es&size=letter&large=true');
  expect(large.text).toContain('Lista de la despensa');
  expect(large.text).toContain('31 envases contienen');
  expect(large.pages.length).toBeGreaterThan(1);
  expect((await eatFirst('language=es&large=true')).text).toContain('Comer primero');
  const [page] = await readStructure(pdfOf(await dell.caller.get(at('/shelf/papers/list?language=en'))));
  const [table] = page ? partsOf(page, 'Table') : [];
  if (!table) throw new Error('no table');
  const [head, ...rows] = partsOf(table, 'TR');
  const heads = head ? partsOf(head, 'TH').map(({ text }) => text.trim()) : [];
  expect(heads).toEqual(['Code', 'What it is', 'Net', 'Eat first', 'Counted']);
  expect(rows.length).toBeGreaterThan(0);
  for (const row of rows) expect(partsOf(row, 'TD')).toHaveLength(heads.length);
});

test('a household’s is its own, common stock’s is for whoever keeps it, and so is what their codes lead to', async () => {
  const elder = await aHousehold(app, storehouse, 'Elder');
  expect((await printed(elder.caller, at('/shelf/papers/list?language=en'))).text).toContain(
    'Nothing stands here.',
  );
  const code = (await shelfList()).pages[0]?.qr.split('/').at(-1) ?? '';
  const found = bodyOf(await dell.caller.get(at(`/papers/${code}`)));
  expect(found).toMatchObject({ kind: 'shelf-list', householdId: dell.householdId });
  expect(await elder.caller.get(at(`/papers/${code}`))).toMatchObject({ status: 403 });
  for (const list of ['list', 'eat-first']) {
    const path = at(`/shelf/papers/${list}?of=common&language=en`);
    expect((await elder.caller.get(path)).body.code).toBe('duty-missing');
    expect((await printed(storehouse.coordinator, path)).text).toContain('Common stock');
  }
});
