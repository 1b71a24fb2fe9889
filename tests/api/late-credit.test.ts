import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { type GrainHouseholds, openGrain } from '../support/fixed-buy.ts';
import { receiveBags } from '../support/landed-buy.ts';
import { refusalOf } from '../support/money-books.ts';
import { aSharedBuy, sharesOf } from '../support/shared-buy.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
});
afterAll(() => app.close());

test('a late credit goes by the line as it was weighed last, to all who got of the food', async () => {
  const buy = await aSharedBuy(app, storehouse, { households });
  await receiveBags(app, storehouse, { buy, offers: buy.offers, bags: { beans: [{}, {}] } });
  bodyOf(await storehouse.coordinator.post(`${buy.path}/lines/${buy.beans}/splits`, {}), 201);
  bodyOf(await buy.treasurer.post(`${buy.path}/recharging`), 201);
  const first = buy.charges.lines.find(
    (line: { costLine: string }) => line.costLine === `goods:${buy.beans}`,
  );
  const credit = { chargeLineId: first.id, minorUnits: 600, till: 'bank', reason: 'Goodwill.' };
  const charges = bodyOf(await buy.treasurer.post(`${buy.path}/late-credits`, credit), 201);
  // Six bags came in the end: 50/35/25/15 lb are met, and 25 lb are common stock's. 6.00 by those weights.
  expect(sharesOf(charges, `late:goods:${buy.beans}`)).toEqual({
    Ashdown: -200,
    Birchall: -140,
    Corran: -100,
    Dell: -60,
    common: -100,
  });
});

test('a late credit is never more than the buy was charged, what came back before included', async () => {
  const buy = await aSharedBuy(app, storehouse, { households });
  const wheat = buy.charges.lines.find(
    (line: { costLine: string }) => line.costLine === `goods:${buy.wheat}`,
  );
  const give = (minorUnits: number) =>
    buy.treasurer.post(`${buy.path}/late-credits`, {
      chargeLineId: wheat.id,
      minorUnits,
      till: 'bank',
      reason: 'Goodwill.',
    });
  const tooMuch = { status: 422, code: 'does-not-add-up', fields: ['minorUnits'], isUnchanged: true };
  expect(await refusalOf(app, () => give(49_851))).toEqual(tooMuch); // the buy was charged 498.50
  bodyOf(await give(49_000), 201);
  expect((await give(851)).body).toMatchObject({ code: 'does-not-add-up', mostMinorUnits: 850 });
  expect(bodyOf(await give(850), 201)).toMatchObject({ clearingMinorUnits: 0 });
});
