import { saidFinish } from '@sheafbook/packing';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { itemBody } from '../support/equipment.ts';
import { aPackingSession, cansOf, openHall, type TestHall } from '../support/packing.ts';
import { printed } from '../support/pdf.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let day: string;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  day = await aPackingSession(storehouse, hall, { lines: 2 });
  for (const [name, containers] of [
    ['Dell', 4],
    ['Birchall', 8],
  ] as const) {
    const { caller } = hall.buy.households[name];
    bodyOf(await caller.put(`${day}/wishes`, { wishes: [cansOf(hall, { containers })] }));
  }
});
afterAll(() => app.close());

const sheet = (query = 'language=en') => printed(hall.lead.caller, `${day}/papers/run-sheet?${query}`);

test('the run sheet says what the plan says, run by run, with bags, packets, labels and allergens (paper 7)', async () => {
  const { text } = await sheet();
  const { lines, session } = bodyOf(await hall.lead.caller.get(`${day}/plan`));
  expect(text).toContain(session.name);
  const [line] = lines;
  expect(line.runs).toHaveLength(2);
  let from = text.indexOf('Line 1');
  for (const [at, run] of line.runs.entries()) {
    const bagNo = run.household === 'Dell' ? hall.wheat.Dell.bagNo : hall.wheat.Birchall.bagNo;
    for (const wanted of [
      hourOf(session.startsAt, run.startsAtSecond),
      run.food.nameEn,
      `${bagNo}`,
      `${run.household}, seat ${run.seat}`,
      '2,500 g',
      '± 40 g',
      `${run.containers}`,
      '1 × 300 ml',
      `${run.fromSerial}–${run.toSerial}`,
      'wheat',
    ]) {
      const found = text.indexOf(wanted, from);
      expect(found, `“${wanted}” in run ${at + 1}`).toBeGreaterThanOrEqual(0);
    }
    from = text.indexOf(`${run.household}, seat`, from);
  }
  for (const { people } of line.blocks) expect(text).toContain(`(${people})`);
  expect(text).toContain(`Ends at ${hourOf(session.startsAt, saidFinish(line.finishSeconds))}`);
  expect(text).toContain('Nobody has said yet what to pack on this line.'); // the second line
});

test('its set-up names the scale of the day and what its last check said, line by line (job map 13, paper 7)', async () => {
  const plain = (text: string) => text.replace(/\s+/g, ' ');
  expect(plain((await sheet()).text)).toContain(
    'No scale is booked for this day. Check the one that stands here',
  );
  const { coordinator, path } = storehouse;
  const wish = itemBody({
    name: 'Floor scale',
    isScale: true,
    serviceEveryUses: null,
    serviceEveryDays: null,
  });
  const { id: itemId, units } = bodyOf(await coordinator.post(`${path}/equipment`, wish), 201);
  bodyOf(await hall.lead.caller.post(`${day}/equipment`, { itemId }), 201);
  const name = `Floor scale 1 (${units[0].code})`;
  expect(plain((await sheet()).text)).toContain(
    `${name}: nobody has checked it. Lay a known weight on it first`,
  );
  const check = (shownGrams: number) =>
    hall.lead.caller.post(`${path}/equipment-units/${units[0].id}/scale-checks`, {
      ...{ laidGrams: 10_000, shownGrams, limitGrams: 10 },
    });
  bodyOf(await check(10_025), 201);
  expect(plain((await sheet()).text)).toMatch(/off by 25 g at its check of .+\. Do not weigh on it\./);
  bodyOf(await check(9_996), 201);
  // By the day itself, in December, a check of September is too long ago.
  expect(plain((await sheet()).text)).toMatch(/last checked on .+\. Lay a known weight on it first/);
  const now = app.clock.now;
  app.clock.now = new Date('2026-11-20T16:00:00Z');
  bodyOf(await check(9_996), 201);
  const { text } = await sheet();
  expect(plain(text)).toMatch(/Floor scale 1 \([^)]+\): true at its check of .+, 4 g off\./);
  // Once in the set-up and once with the first line, which runs; the second packs nothing.
  expect(plain(text).split(name)).toHaveLength(3);
  expect(plain((await sheet('language=es')).text)).toContain('exacta en su prueba del');
  app.clock.now = now;
});

test('who has said yes stands at the stations by name, and the clean-down ends with a photo (papers 7, job map 7.5 and 7.9)', async () => {
  const hands = { Dell: { maySeam: true }, Birchall: {}, Corran: {}, Ashdown: { mayLift: false } };
  for (const [name, said] of Object.entries(hands)) {
    const { caller } = hall.buy.households[name as keyof typeof hands];
    bodyOf(await caller.put(`${day}/hand`, { isComing: true, ...said }));
  }
  const { spells, session } = bodyOf(await hall.lead.caller.get(`${day}/plan`));
  const [spell] = spells;
  const seam = spell.blocks.find(({ stations }: { stations: string[] }) => stations.includes('seam'));
  expect(seam).toMatchObject({ line: 1, missing: 0, names: [expect.stringContaining('Dell')] });
  const missing = spell.blocks.map((block: { missing: number }) => block.missing);
  expect(missing.reduce((sum: number, one: number) => sum + one, 0)).toBe(2); // six are wanted, four come
  const { text } = await sheet();
  expect(text).toContain(`${hourOf(session.startsAt, spell.startsAtSecond)} ${seam.names[0]}`);
  expect(text.replaceAll(/\s+/g, ' ')).toContain('Sanitised where wet');
  expect(text.replaceAll(/\s+/g, ' ')).toContain('Photo taken');
  expect(text.replaceAll(/\s+/g, ' ')).toContain('A planning aid only. Local food, fire and building codes');
});

test('a run with dry ice says grams, the wait before its lid is closed, and what the ice can do (job map 7)', async () => {
  const plain = (text: string) => text.replace(/\s+/g, ' ');
  const pails = {
    ...{ containerKindId: hall.shelves.kinds['pail-5-gallon-bare'] ?? '', treatment: 'dry-ice' },
    ...{ containers: 2, gramsEach: 9000 },
  };
  expect(plain((await sheet()).text)).not.toContain('Never close a lid on dry ice');
  bodyOf(await hall.buy.households.Corran.caller.put(`${day}/wishes`, { wishes: [cansOf(hall, pails)] }));
  const { lines, session } = bodyOf(await hall.lead.caller.get(`${day}/plan`));
  const ices = lines[0].runs.map(({ dryIce }: { dryIce: unknown }) => dryIce);
  expect(ices).toHaveLength(3);
  // An ounce a gallon: 5 gallons are 141.7 g, rounded up; the hour is the pail leaflet's least.
  expect(ices.filter((ice: unknown) => ice !== null)).toEqual([
    expect.objectContaining({ gramsEach: 142, gramsInAll: 284, waitMinutes: 60 }),
  ]);
  // Their lids wait from the end of their run and the rest on: longer than what runs after them and the cleaning take.
  const { runs, lids, finishSeconds } = lines[0];
  const ice = runs.findIndex(({ dryIce }: { dryIce: unknown }) => dryIce !== null);
  const restSeconds = Math.max(0, 60 * session.breakMinutes - lines[0].waitSeconds);
  expect(lids).toEqual({
    lastSecond: runs[ice].endsAtSecond + restSeconds + 3600,
    longerSeconds: 3600 - 60 * session.cleanDownMinutes - (runs.at(-1).endsAtSecond - runs[ice].endsAtSecond),
  });
  expect(finishSeconds).toBe(lids.lastSecond);
  const { lines: needed, unkept } = bodyOf(await hall.lead.caller.get(`${day}/supplies`));
  expect(needed).toEqual([]);
  expect(unkept).toContainEqual(expect.objectContaining({ kind: 'dry-ice', pieces: 284 }));
  const text = plain((await sheet()).text);
  expect(text).toContain('dry ice, 142 g in each, 284 g in all; lid half open for 60 minutes at least');
  expect(text).toContain('The last lid over dry ice may be closed at');
  expect(text).toContain('Wear insulated gloves and cover your eyes. Never close a lid on dry ice');
  expect(text).toContain('never put it in a metal can');
  expect(text).toContain('Keep doors open, with a CO2 meter near the floor.');
  expect(text.split('Never close a lid on dry ice')).toHaveLength(2); // once, at the line that has it
  expect(plain((await sheet('language=es')).text)).toContain('hielo seco, 142 g en cada uno, 284 g en total');
});

test('it is for whoever runs the day, and its code leads only them back', async () => {
  const { caller } = hall.buy.households.Dell;
  expect(await caller.get(`${day}/papers/run-sheet`)).toMatchObject({ status: 403 });
  const code = (await sheet()).pages[0]?.qr.split('/').at(-1) ?? '';
  const found = bodyOf(await hall.lead.caller.get(`${storehouse.path}/papers/${code}`));
  expect(found).toMatchObject({ kind: 'run-sheet', subjectId: day.split('/').at(-1) });
  expect(await caller.get(`${storehouse.path}/papers/${code}`)).toMatchObject({ status: 403 });
});

test('in Spanish it says the same', async () => {
  const { text } = await sheet('language=es&large=true');
  expect(text).toContain('Hoja de la jornada');
  expect(text).toContain('Trigo duro rojo de invierno');
  expect(text).toContain('trigo');
});

/** On the wall of the storehouse, to the minute. */
const hourOf = (startsAt: string, seconds: number): string =>
  new Date(Date.parse(startsAt) + Math.floor(seconds) * 1000).toLocaleTimeString('en-GB', {
    ...{ timeZone: 'America/Chicago', hour: '2-digit', minute: '2-digit' },
  });
