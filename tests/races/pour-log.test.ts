import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aPackingSession, aPourBody, bringWheat, openHall, type TestHall } from '../support/packing.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
});
afterAll(() => app.close());

test('phones that pour from one bag at once never take more than it holds, and no serial is missing or doubled', async () => {
  const day = await aPackingSession(storehouse, hall, { lines: 2 });
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  const brought = await bringWheat(hall, day, 'Dell');
  const grams = Math.floor(brought / 6.5); // six cans and a rest that is too little for a seventh
  const callers = [hall.lead.caller, storehouse.coordinator];
  const answers = await Promise.all(
    Array.from({ length: 20 }, (_, at) =>
      callers[at % 2]?.post(
        `${day}/pours`,
        aPourBody(hall, { name: 'Dell', grams: [grams], line: 1 + (at % 2) }),
      ),
    ),
  );
  expect(answers.filter((answer) => answer?.status === 201)).toHaveLength(6);
  const codes = answers.filter((answer) => answer?.status !== 201).map((answer) => answer?.body.code);
  expect(new Set(codes)).toEqual(new Set(['not-enough-left']));
  const { pours, mass } = bodyOf(await hall.lead.caller.get(`${day}/log`));
  expect(mass).toMatchObject({ inContainersGrams: 6 * grams, leftInBagsGrams: brought - 6 * grams });
  for (const line of [1, 2]) {
    const serials = pours
      .filter((pour: { line: number }) => pour.line === line)
      .map((pour: { serial: number }) => pour.serial);
    expect(serials).toEqual(serials.map((_: number, at: number) => at + 1));
  }
});
