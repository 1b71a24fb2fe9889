import { spellCode } from '@sheafbook/units';
import { afterAll, beforeAll, expect, test } from 'vitest';
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
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let day: string;
/** Three labels made ahead for Birchall: poured and taken back, poured, and not used yet. */
let spent: string;
let filled: string;
let blank: string;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  day = await aPackingSession(storehouse, hall, { lines: 2 });
  const { caller, householdId } = hall.buy.households.Birchall;
  const wishes = [cansOf(hall, { containers: 3, gramsEach: 1_000 })];
  bodyOf(await caller.put(`${day}/wishes`, { wishes }));
  const wish = {
    ...{ bagId: hall.wheat.Birchall.bagId, householdId, treatment: 'oxygen-absorber', count: 3 },
    containerKindId: hall.shelves.kinds['can-no-10'],
  };
  const { labels } = bodyOf(await lead().post(`${day}/labels`, wish), 201);
  [spent, filled, blank] = labels.map(({ code }: { code: string }) => code);
  bodyOf(await lead().post(`${day}/start`));
  await bringWheat(hall, day, 'Birchall');
  const { entryId } = bodyOf(await under([spent]), 201);
  bodyOf(await under([filled]), 201);
  bodyOf(await lead().post(`${day}/pours/${entryId}/undoing`, { reason: 'the wrong bag' }), 201);
});
afterAll(() => app.close());

const lead = () => hall.lead.caller;
const under = (codes: readonly (string | null)[], line = 1) => {
  const grams = codes.map(() => 1_000);
  return lead().post(`${day}/pours`, { ...aPourBody(hall, { name: 'Birchall', line, grams }), codes });
};
type Named = { code: string; household: string };
const listed = async (path = day) => {
  const body = bodyOf(await lead().get(`${path}/labels`));
  return {
    labels: body.labels.map(({ code }: Named) => code),
    spent: body.spent.map(({ code, household }: Named) => ({ code, household })),
  };
};

test('a label whose pour was taken back is listed as spent, once and on its day alone; what stands on a can is in neither list', async () => {
  expect(await listed()).toEqual({ labels: [blank], spent: [{ code: spent, household: 'Birchall' }] });
  const other = await aPackingSession(storehouse, hall, {
    ...{ startsAt: '2026-12-12T17:00:00Z', endsAt: '2026-12-12T23:00:00Z' },
  });
  expect((await listed(other)).spent).toEqual([]);
});

test('a spent label is poured under no more, on either line, and nothing beside it is poured either', async () => {
  for (const line of [1, 2])
    expect(await refusalOf(app, () => under([blank, spent], line))).toMatchObject(
      refused(409, 'label-used', 'codes.1'),
    );
  expect((await listed()).labels).toEqual([blank]);
});

test('its household pours nothing under it by hand either, and is told what to do; a filled one it tops up', async () => {
  const { caller } = hall.buy.households.Birchall;
  const rows = await app.admin<
    { id: string; code: string }[]
  >`select container_id as id, container_code as code
    from book.container where container_code in ${app.admin([spent, filled])}`;
  const into = (code: string, language = 'en') => {
    const id = rows.find((row) => row.code === code)?.id;
    const wish = { bagId: hall.wheat.Birchall.bagId, grams: 100 };
    return caller.post(`${storehouse.path}/containers/${id}/pours`, wish, { 'Accept-Language': language });
  };
  expect(await refusalOf(app, () => into(spent))).toEqual(refused(409, 'label-used'));
  expect((await into(spent)).body.detail).toBe(
    `What was poured into ${spellCode(spent)} was taken back, so its label is spent. Throw the label away and fill a new container.`,
  );
  expect((await into(spent, 'es')).body.detail).toMatch(
    /se devolvió, así que su etiqueta está gastada\. Tire/,
  );
  expect((await into(filled)).body).toMatchObject({ code: filled, grams: 1_100 });
});

test('it is printed on no further sheet, nor offered to be', async () => {
  const sheet = (codes: readonly string[]) => `${day}/labels/paper?sheet=a4-8&language=en&codes=${codes}`;
  expect(await refusalOf(app, () => lead().get(sheet([blank, spent])))).toMatchObject(
    refused(404, 'thing-not-found'),
  );
  const { pages, text } = await printed(lead(), sheet([blank]));
  expect(pages[0]?.marks).toHaveLength(1);
  expect(text).not.toContain(spent);
});

test('what was poured under it is back in its bag, and the next can gets a code of its own', async () => {
  const { caller, householdId } = hall.buy.households.Birchall;
  const [row] = await app.admin<{ id: string }[]>`select container_id as id from book.container
    where container_code = ${spent}`;
  const shown = bodyOf(await caller.get(`${storehouse.path}/containers/${row?.id}`));
  expect(shown).toMatchObject({ code: spent, grams: 0 });
  expect(await hall.shelves.gramsIn(row?.id ?? '', householdId)).toBe(0);
  const { containers } = bodyOf(await under([blank, null]), 201);
  expect(containers[0].code).toBe(blank);
  expect([spent, filled, blank]).not.toContain(containers[1].code);
  expect(await listed()).toEqual({ labels: [], spent: [{ code: spent, household: 'Birchall' }] });
});
