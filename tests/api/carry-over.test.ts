import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Caller, TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aPackingSession, aPourBody, bringWheat, openHall, type TestHall } from '../support/packing.ts';
import { printed } from '../support/pdf.ts';
import { piecesOf } from '../support/shelf.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
type Can = { id: string; code: string };
/** On line 1 Dell's beans, Ashdown's wheat, and Dell's beans again; on line 2 beans alone. */
let ran: { before: Can; wheat: Can; after: Can; elsewhere: Can };
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  const { Dell } = hall.buy.households;
  const lead = hall.lead.caller;
  const day = await aPackingSession(storehouse, hall, { lines: 2 });
  bodyOf(await lead.post(`${day}/start`));
  await bringWheat(hall, day, 'Ashdown');
  const [beans] = await piecesOf(storehouse, hall.buy.splitIds.beans, Dell);
  const own = { bagId: beans?.bagId ?? '', householdId: Dell.householdId };
  bodyOf(await lead.post(`${day}/bags`, own));
  const pour = async (body: object): Promise<Can> =>
    bodyOf(await lead.post(`${day}/pours`, body), 201).containers[0];
  const ofBeans = (line: number) =>
    pour({ ...aPourBody(hall, { name: 'Dell', line, grams: [500], targetGrams: 500 }), ...own });
  ran = {
    before: await ofBeans(1),
    wheat: await pour(aPourBody(hall, { name: 'Ashdown', grams: [500], targetGrams: 500 })),
    after: await ofBeans(1),
    elsewhere: await ofBeans(2),
  };
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
const dell = () => hall.buy.households.Dell.caller;
const metOf = async (caller: Caller, { code }: Can) =>
  bodyOf(await caller.get(at(`/labels?codes=${code}`))).labels[0].metOnLine;
/** The words of a can's label, on a sticker that is large enough for whole lines. */
const labelOf = async (caller: Caller, { code }: Can, language: string) => {
  const path = at(`/labels/paper?sheet=a4-8&codes=${code}&language=${language}`);
  return (await printed(caller, path)).text.replaceAll(/\s+/g, ' ');
};

test('a label says what ran before it on its line, though it was a neighbour’s, and not whose', async () => {
  expect(await metOf(dell(), ran.after)).toEqual(['gluten', 'wheat']);
  const words = await labelOf(dell(), ran.after, 'en');
  expect(words).toContain('Packed on a line with gluten, wheat.');
  expect(words).not.toContain('Ashdown');
  expect(await labelOf(dell(), ran.after, 'es')).toContain('Envasado en una línea con gluten, trigo.');
});

test('and nothing of what ran after it, on another line, or is its own', async () => {
  for (const can of [ran.before, ran.elsewhere]) {
    expect(await metOf(dell(), can)).toEqual([]);
    expect(await labelOf(dell(), can, 'en')).not.toContain('Packed on a line');
  }
  expect(await metOf(hall.buy.households.Ashdown.caller, ran.wheat)).toEqual([]);
});

test('a trace of the wheat names the beans that ran after it with what they may have met, and no others', async () => {
  const traced = at(`/trace?code=${ran.wheat.code}&task=recall`);
  const { way } = bodyOf(await hall.lead.caller.get(traced));
  expect(way.carryOvers).toEqual([
    {
      ...{
        id: ran.after.id,
        code: ran.after.code,
        food: { nameEn: 'Black beans', nameEs: expect.any(String) },
      },
      ...{ line: 1, serial: 3, isThere: true, newAllergens: ['gluten', 'wheat'] },
      afterCode: ran.wheat.code,
    },
  ]);
  expect(way.carryOversOfOthers).toBe(0);
});

test('the neighbour whose wheat it was is told how many, and not which', async () => {
  const { way } = bodyOf(await hall.buy.households.Ashdown.caller.get(at(`/trace?code=${ran.wheat.code}`)));
  expect(way.carryOversOfOthers).toBe(1);
  expect(JSON.stringify(way)).not.toContain(ran.after.code);
});
