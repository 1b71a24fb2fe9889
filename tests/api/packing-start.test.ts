import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf } from '../support/fingerprint.ts';
import { aPackingSession, cansOf, openHall, type TestHall } from '../support/packing.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

// Job map 7.4: what somebody with an allergy gets runs before whatever carries the allergen, or the line does not run.
let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
});
afterAll(() => app.close());

const lead = () => hall.lead.caller;

/** What a household owns in bags, other than wheat. */
async function aFoodOf(name: 'Ashdown' | 'Birchall') {
  const { bags } = bodyOf(
    await hall.buy.households[name].caller.get(`${storehouse.path}/own-bags?limit=all`),
  );
  return bags.find(({ food }: { food: { nameEn: string } }) => /beans/i.test(food.nameEn)).food;
}

test('a day on which somebody would get what must not meet the food before it does not begin, until the times are moved', async () => {
  const { Ashdown, Birchall } = hall.buy.households;
  const day = await aPackingSession(storehouse, hall);
  const beans = await aFoodOf('Birchall');
  const eater = { name: 'Cy', birthOn: '2015', excludedAllergens: ['wheat'] };
  bodyOf(
    await Birchall.caller.post(`${storehouse.path}/households/${Birchall.householdId}/eaters`, eater),
    201,
  );
  bodyOf(await Ashdown.caller.put(`${day}/wishes`, { wishes: [cansOf(hall)] }));
  const ofBeans = { ...cansOf(hall), foodId: beans.id, containers: 1, gramsEach: 1000 };
  bodyOf(await Birchall.caller.put(`${day}/wishes`, { wishes: [ofBeans] }));
  bodyOf(await Ashdown.caller.post(`${day}/slots`, { startsAt: '2026-12-05T18:00:00Z' }), 201);
  const late = bodyOf(await Birchall.caller.post(`${day}/slots`, { startsAt: '2026-12-05T19:00:00Z' }), 201);

  const plan = bodyOf(await lead().get(`${day}/plan`));
  expect(plan.lines[0].clashes).toMatchObject([{ allergen: 'wheat' }]);
  const refusal = await refusalOf(app, () => lead().post(`${day}/start`));
  expect(refusal).toMatchObject({ status: 409, code: 'allergen-clash', isUnchanged: true });
  const { body } = await lead().post(`${day}/start`);
  expect(body.detail).toBe(
    `Somebody who gets ${beans.nameEn} must not meet what runs before it on line 1. Move the times, or pack it on another day.`,
  );
  expect(JSON.stringify(body)).not.toMatch(/Cy|Birchall|"wheat"/);
  const spanish = await lead().post(`${day}/start`, undefined, { 'Accept-Language': 'es' });
  expect(spanish.body.detail).toContain(`Alguien que recibe ${beans.nameEs} no debe encontrar`);

  bodyOf(await Birchall.caller.post(`${day}/slots/${late.id}/giving-back`));
  bodyOf(await Birchall.caller.post(`${day}/slots`, { startsAt: '2026-12-05T17:30:00Z' }), 201);
  expect(bodyOf(await lead().post(`${day}/start`))).toMatchObject({ stage: 'running' });
  const reads = bodyOf(
    await Birchall.caller.get(`${storehouse.path}/households/${Birchall.householdId}/private-reads`),
  );
  expect(JSON.stringify(reads)).toContain('beginning of a packing session');
});
