import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import {
  aPackingSession,
  aPourBody,
  bringWheat,
  cansOf,
  openHall,
  type TestHall,
} from '../support/packing.ts';
import { printed } from '../support/pdf.ts';
import { aSeamer, GOOD, LIMITS, type TestSeamer, THICK } from '../support/seam.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let seamer: TestSeamer;
let day: string;
let failedId: string;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  day = await aPackingSession(storehouse, hall);
});
afterAll(() => app.close());

const lead = () => hall.lead.caller;
const log = (query = 'language=en') => printed(lead(), `${day}/papers/seam-log?${query}`);
const minutesLater = (minutes: number) => {
  app.clock.now = new Date(app.clock.now.getTime() + minutes * 60_000);
};

test('a seam log without what the maker allows is refused, whether cans are wished for or nothing is', async () => {
  const unsaid = refused(409, 'seam-limits-missing');
  expect(await refusalOf(app, () => lead().get(`${day}/papers/seam-log`))).toEqual(unsaid);
  const { caller } = hall.buy.households.Ashdown;
  bodyOf(await caller.put(`${day}/wishes`, { wishes: [cansOf(hall, { containers: 4 })] }));
  expect(await refusalOf(app, () => lead().get(`${day}/papers/seam-log`))).toEqual(unsaid);
});

test('before the day it holds the limits and room for a pen (paper 8)', async () => {
  seamer = await aSeamer(storehouse, hall);
  const { text } = await log();
  for (const figure of ['110 to 120', '55 to 62', '120 to 130', 'at least 55 %', '10 and 9', LIMITS.source])
    expect(text).toContain(figure);
  expect(text).toContain('First good one since');
});

describe('after a check that failed', () => {
  beforeAll(async () => {
    bodyOf(await lead().post(`${day}/start`));
    await bringWheat(hall, day, 'Ashdown');
    const pour = () =>
      lead().post(`${day}/pours`, aPourBody(hall, { name: 'Ashdown', grams: [10, 10], targetGrams: 10 }));
    bodyOf(await seamer.check(day, { occasion: 'first', gauge: 'G-7' }), 201);
    minutesLater(10);
    bodyOf(await pour(), 201);
    bodyOf(await seamer.check(day, { serial: 1 }), 201);
    minutesLater(7);
    bodyOf(await pour(), 201);
    const { check } = bodyOf(
      await seamer.check(day, { serial: 4, measures: THICK, note: 'a worn roll' }),
      201,
    );
    failedId = check.id;
    for (const _ of [1, 2, 3]) {
      minutesLater(5);
      bodyOf(await seamer.check(day, { occasion: 'clearing' }), 201);
    }
  });

  test('the log says of each check what the API says, and of the failed one what stands in doubt and what cleared it', async () => {
    const { text } = await log();
    const { checks, windows, lines } = bodyOf(await lead().get(`${day}/seals`));
    expect(checks).toHaveLength(6);
    let from = text.indexOf('Checks');
    for (const [at, check] of checks.entries()) {
      const { widthMils, thicknessMils, countersinkMils, coverHookMils, bodyHookMils } = check.measures;
      for (const wanted of [
        hourOf(check.checkedAt),
        check.serial === null ? 'trial' : `${check.serial}`,
        `W ${widthMils}, T ${thicknessMils}, C ${countersinkMils}`,
        `lid hook ${coverHookMils}, body hook ${bodyHookMils}`,
        check.passed ? 'Passed' : 'FAILED',
        check.checkedByName,
      ]) {
        const found = text.indexOf(wanted, from);
        expect(found, `“${wanted}” of check ${at + 1}`).toBeGreaterThanOrEqual(0);
      }
      from = text.indexOf(`lid hook ${coverHookMils}`, from) + 1;
    }
    expect(text).toContain('55.8 %'); // 48 of 86, as the gauge’s readings make it
    for (const wanted of ['G-7', 'thickness out of limits', 'a worn roll']) expect(text).toContain(wanted);
    const [{ suspects }] = windows;
    expect(suspects.map(({ serial }: { serial: number }) => serial)).toEqual([2, 3, 4]);
    expect(text).toContain('line 1, serials 2 to 4: 3 containers');
    expect(text).toContain('still on hold: 3');
    const cleared = text.indexOf('Third: it runs again');
    expect(text.indexOf(hourOf(checks.at(-1).checkedAt), cleared)).toBeGreaterThan(cleared);
    expect(text).toContain(`Last good on line 1, Seamer: ${hourOf(lines[0].lastGood.checkedAt)}`);
    expect(GOOD.thicknessMils).toBeLessThan(THICK.thicknessMils);
  });

  test('the tag names each container in doubt by its serial and code, says what must not be done, and names no household', async () => {
    const { text, pages } = await printed(
      lead(),
      `${storehouse.path}/seal-checks/${failedId}/tag?language=en`,
    );
    const { windows } = bodyOf(await lead().get(`${day}/seals`));
    for (const { serial, spelled } of windows[0].suspects) expect(text).toContain(`${serial}: ${spelled}`);
    for (const wanted of ['ON HOLD', 'Do not eat, open', 'Never taste', 'CDC', 'a worn roll', '3 containers'])
      expect(text).toContain(wanted);
    expect(text).not.toContain('Ashdown');
    const code = pages[0]?.qr.split('/').at(-1) ?? '';
    const found = bodyOf(await lead().get(`${storehouse.path}/papers/${code}`));
    expect(found).toMatchObject({ kind: 'quarantine-tag', subjectId: failedId });
    expect(await hall.buy.households.Dell.caller.get(`${storehouse.path}/papers/${code}`)).toMatchObject({
      status: 403,
    });
  });

  test('what was answered for stands on it no longer, and at last the tag says that it comes off', async () => {
    const { windows } = bodyOf(await lead().get(`${day}/seals`));
    const ids = windows[0].suspects.map(({ containerId }: { containerId: string }) => containerId);
    const settle = async (containerIds: string[]) =>
      bodyOf(
        await lead().post(`${storehouse.path}/seal-holds/settling`, {
          ...{ containerIds, disposition: 'discard', note: 'thrown away' },
        }),
      );
    const tag = () => printed(lead(), `${storehouse.path}/seal-checks/${failedId}/tag?language=es`);
    await settle(ids.slice(0, 1));
    expect((await tag()).text).toContain('2 envases retenidos');
    await settle(ids.slice(1));
    const { text } = await tag();
    expect(text).toContain('Ya no está retenido');
    expect(text).not.toContain('No lo coma');
    expect((await log('language=es')).text).toContain('tirados: 3');
  });
});

test('the tag of a bag on hold says which bag, since when, why, and that two let it go', async () => {
  const { bagId } = hall.wheat.Dell;
  const hold = bodyOf(
    await lead().post(`${storehouse.path}/bags/${bagId}/holds`, { reason: 'Webbing in the top.' }),
    201,
  );
  const { text } = await printed(lead(), `${storehouse.path}/holds/${hold.id}/tag?language=en&large=true`);
  for (const wanted of [
    ...['ON HOLD', hold.bagCode, `Bag ${hold.bagNo}`, 'Webbing in the top.', 'Two people'],
    hourOf(hold.heldAt).slice(-5),
  ])
    expect(text).toContain(wanted);
});

describe('the tag of a hold over more than a bag', () => {
  const facts = async () => {
    const { bagId } = hall.wheat.Dell;
    const [row] = await app.admin<
      Record<'lot' | 'delivery' | 'supplier' | 'mark' | 'food' | 'seller', string>[]
    >`
      update book.lot l set supplier_mark = 'K-77' from book.bag b, book.supplier s
      where b.bag_id = ${bagId} and l.lot_id = b.lot_id and s.supplier_id = l.supplier_id
      returning b.lot_id as lot, b.delivery_id as delivery, l.supplier_id as supplier, l.supplier_mark as mark,
        l.food_id as food, s.name as seller`;
    if (!row) throw new Error('the bag has a lot');
    return row;
  };
  type Facts = Awaited<ReturnType<typeof facts>>;
  const chosen = async () => {
    const [can] = await app.admin<{ id: string }[]>`select container_id as id from book.container
      where storehouse_id = ${storehouse.storehouseId} order by container_id limit 1`;
    return [can?.id];
  };
  const sessionId = () => day.split('/').at(-1);
  const window = { line: 1, fromSerial: 1, toSerial: 2 };
  const days = { fromOn: '2026-01-01', toOn: '2026-12-31' };
  const scopes: Record<string, [(of: Facts) => object, (of: Facts) => string[], string]> = {
    lot: [({ lot }) => ({ lotId: lot }), ({ seller }) => ['Lot K-77', seller], 'Lote K-77'],
    delivery: [({ delivery }) => ({ deliveryId: delivery }), ({ seller }) => [seller], 'Una entrega entera'],
    mark: [
      ({ supplier, mark }) => ({ supplierId: supplier, mark }),
      ({ seller }) => ['the mark K-77', seller],
      'la marca K-77',
    ],
    food: [({ food }) => ({ foodId: food, ...days }), () => ['bags that came'], 'sacos que llegaron'],
    session: [
      () => ({ sessionId: sessionId(), ...window }),
      () => ['All that was packed in', 'line 1', 'serials 1 to 2'],
      'números 1 a 2',
    ],
    containers: [() => ({}), () => ['Containers chosen one by one'], 'Envases elegidos uno por uno'],
  };

  test.for(Object.entries(scopes))(
    '%s: it says what is held, why and who lets it go, and its code leads anyone to no household’s page',
    async ([scope, [of, wanted, spanish]]) => {
      const known = await facts();
      const cans = scope === 'containers' ? { containerIds: await chosen() } : {};
      const body = { of: { scope, ...of(known), ...cans }, reason: 'A notice of the supplier.' };
      const hold = bodyOf(await lead().post(`${storehouse.path}/holds`, body), 201);
      const { caller } = hall.buy.households.Ashdown;
      const tag = `${storehouse.path}/holds/${hold.id}/tag`;
      const { text, pages } = await printed(caller, `${tag}?language=en`);
      for (const words of [
        ...wanted(known),
        'ON HOLD',
        'A notice of the supplier.',
        hourOf(hold.heldAt).slice(-5),
      ])
        expect(text).toContain(words);
      for (const words of ['Do not eat, open', 'Never taste', 'Two people', 'Code of the one'])
        expect(text).toContain(words);
      expect((await printed(caller, `${tag}?language=es&large=true`)).text).toContain(spanish);
      const code = pages[0]?.qr.split('/').at(-1) ?? '';
      expect(bodyOf(await caller.get(`${storehouse.path}/papers/${code}`))).toMatchObject({
        ...{ kind: 'quarantine-tag', subjectId: hold.id, buyId: null, withinId: null },
      });
      bodyOf(await lead().post(`${storehouse.path}/holds/${hold.id}/release-request`, { finding: 'Clean.' }));
      bodyOf(await storehouse.coordinator.post(`${storehouse.path}/holds/${hold.id}/release`));
      const after = await printed(caller, `${tag}?language=en`);
      expect(after.text).toContain('take this tag off');
      expect(after.text).not.toContain('Do not eat');
    },
  );
});

test('on A4 and Letter, plain and large, in both languages, nothing runs over the edge', async () => {
  const sizes = { a4: [595.28, 841.89], letter: [612, 792] } as const;
  for (const [size, sides] of Object.entries(sizes))
    for (const query of [`size=${size}&language=en`, `size=${size}&language=es&large=true`])
      for (const path of [`${day}/papers/seam-log`, `${storehouse.path}/seal-checks/${failedId}/tag`]) {
        const { pages } = await printed(lead(), `${path}?${query}`);
        for (const { width, height, texts } of pages) {
          expect([width, height].toSorted((a, b) => a - b)).toEqual(sides);
          expect(Math.max(...texts.map(({ right }) => right))).toBeLessThanOrEqual(width - 41);
          expect(Math.min(...texts.map(({ points }) => points))).toBeGreaterThanOrEqual(
            query.includes('large') ? 16 : 11,
          );
        }
      }
});

/** On the wall of the storehouse, to the minute. */
const hourOf = (instant: string): string =>
  new Date(instant)
    .toLocaleString('sv-SE', { timeZone: 'America/Chicago', dateStyle: 'short', timeStyle: 'short' })
    .replace('T', ' ');
