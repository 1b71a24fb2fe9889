import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf } from '../support/fingerprint.ts';
import { aPackingSession, cansOf, openHall, type TestHall } from '../support/packing.ts';
import { printed } from '../support/pdf.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let packets: string;
let day: string; // of the 5th of December
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  const wish = { name: 'Absorbers', kind: 'absorber', sizeMillilitres: 300, packPieces: 50 };
  packets = bodyOf(await lead().post(at('/supplies'), { ...wish, packMinorUnits: 600 }), 201).id;
  day = await aPackingSession(storehouse, hall);
  const { Ashdown } = hall.buy.households;
  bodyOf(await Ashdown.caller.put(`${day}/wishes`, { wishes: [cansOf(hall, { containers: 15 })] }));
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const lead = () => hall.lead.caller;
const came = (pieces: number, useBy: string | null, more: Record<string, unknown> = {}) =>
  lead().post(at('/supply-purchases'), {
    paidBy: { who: 'nobody' },
    lines: [{ supplyId: packets, pieces, minorUnits: 0, useBy }],
    ...more,
  });
const onShelf = async () => {
  const { supplies } = bodyOf(await lead().get(at('/supplies')));
  const { onHandPieces, useBys, spoiling } = supplies.find(({ id }: { id: string }) => id === packets);
  return { onHandPieces, useBys, spoiling };
};
const ofDay = async () => {
  const [line] = bodyOf(await lead().get(`${day}/supplies`)).lines;
  return line;
};
const onDay = async <Of>(now: string, look: () => Promise<Of>): Promise<Of> => {
  const before = app.clock.now;
  app.clock.now = new Date(now);
  const seen = await look();
  app.clock.now = before;
  return seen;
};

test('what is past its day, or will be on the packing day, is named, and the plan does not count on it', async () => {
  bodyOf(await came(20, '2026-12-04'), 201);
  bodyOf(await came(10, null), 201);
  bodyOf(await came(5, '2027-06-30'), 201);
  const passes = { standing: 'passes', useBy: '2026-12-04', pieces: 20 };
  expect(await onShelf()).toEqual({
    onHandPieces: 35,
    useBys: [
      { useBy: '2026-12-04', pieces: 20 },
      { useBy: '2027-06-30', pieces: 5 },
    ],
    spoiling: [passes],
  });
  // 15 cans take 15 packets and one that may spoil: 15 of the 35 are good that day.
  expect(await ofDay()).toMatchObject({
    ...{ neededPieces: 16, shortPieces: 1, packsToBuy: 1 },
    supply: { name: 'Absorbers', onHandPieces: 35, spoiling: [passes] },
  });
  expect((await onDay('2026-12-04T20:00:00Z', ofDay)).supply.spoiling).toEqual([passes]);
  expect((await onDay('2026-12-05T20:00:00Z', ofDay)).supply.spoiling).toEqual([
    { ...passes, standing: 'past' },
  ]);
  expect((await onDay('2026-12-05T20:00:00Z', onShelf)).spoiling).toEqual([{ ...passes, standing: 'past' }]);
});

test('the run sheet names it before the line runs, in both languages', async () => {
  const sheet = async (language: string) =>
    (await printed(lead(), `${day}/papers/run-sheet?language=${language}`)).text.replace(/\s+/g, ' ');
  expect(await sheet('en')).toMatch(/Absorbers: 20 of those on hand are good until 4 Dec(ember)? 2026 only/);
  expect(await sheet('es')).toMatch(
    /Absorbers: 20 de los que hay valen solo hasta el 4 (de )?dic\S* (de )?2026/,
  );
});

test('the oldest is used first: what a count takes away was the first that came', async () => {
  const count = (countedPieces: number, bookPieces: number) =>
    lead().post(at(`/supplies/${packets}/counts`), { countedPieces, bookPieces, reason: 'thrown away' });
  bodyOf(await count(18, 35), 201);
  expect((await onShelf()).spoiling).toEqual([{ standing: 'passes', useBy: '2026-12-04', pieces: 3 }]);
  bodyOf(await count(15, 18), 201);
  expect(await onShelf()).toMatchObject({ useBys: [{ useBy: '2027-06-30', pieces: 5 }], spoiling: [] });
  expect(await ofDay()).toMatchObject({ shortPieces: 1, supply: { spoiling: [] } });
});

test('what came and was taken back is on no shelf', async () => {
  const { entryId } = bodyOf(await came(50, '2026-11-01'), 201);
  expect((await onShelf()).spoiling).toEqual([{ standing: 'passes', useBy: '2026-11-01', pieces: 50 }]);
  bodyOf(
    await hall.buy.treasurer.post(at(`/entries/${entryId}/reversal`), { reason: 'the wrong pack' }),
    201,
  );
  expect(await onShelf()).toMatchObject({ onHandPieces: 15, spoiling: [] });
});

test('a day that was over when the pack came, that is none or that nobody lives to see is refused at its line', async () => {
  const today = app.clock.now.toISOString().slice(0, 10);
  for (const useBy of ['2026-01-31', '2026-02-30', '2300-01-01'])
    expect(await refusalOf(app, () => came(5, useBy)), useBy).toMatchObject({
      ...{ status: 400, code: 'invalid-input', fields: ['lines.0.useBy'] },
    });
  expect((await came(5, '2026-01-31')).body.detail).toMatch(/^This day was over when it came\./);
  bodyOf(await came(1, today, { onDay: today }), 201); // on its last day it is good
  expect((await onShelf()).onHandPieces).toBe(16);
});
