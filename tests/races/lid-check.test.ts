import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Answer, TestApp } from '../support/app.ts';
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

type Jar = { id: string; code: string };

test('of phones that answer for the same jars at once each counts what it was the first to say, and a loose lid stays loose', async () => {
  app.clock.now = new Date('2026-12-05T14:00:00Z');
  const day = await aPackingSession(storehouse, hall);
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  await bringWheat(hall, day, 'Dell');
  const jar = { containerKindId: hall.shelves.kinds['jar-quart'], treatment: 'vacuum', targetGrams: 500 };
  const body = { ...aPourBody(hall, { name: 'Dell', grams: Array<number>(6).fill(500), ...jar }) };
  const jars: Jar[] = bodyOf(await hall.lead.caller.post(`${day}/pours`, body), 201).containers;
  app.clock.now = new Date('2026-12-06T17:00:00Z');
  const containerIds = jars.map(({ id }) => id);
  const [first] = jars;
  const lead = { of: 'common', containerIds };
  const owner = { of: 'household', containerIds: [], looseCodes: [first?.code] };
  const answer = (wish: Record<string, unknown>): Promise<Answer> =>
    (wish.of === 'common' ? hall.lead.caller : hall.buy.households.Dell.caller).post(
      `${storehouse.path}/lids/answers`,
      wish,
    );
  const answers = await Promise.all([lead, owner, lead, owner, lead, owner].map(answer));
  const taken = answers.filter(({ status }) => status === 201).map(({ body }) => body);
  // Whoever says that all held after one of them was found loose is told so, and says nothing of the others.
  const refused = answers.filter(({ status }) => status !== 201).map(({ body }) => body.code);
  expect(refused.every((code) => code === 'lid-found-loose')).toBe(true);
  expect(taken.flatMap(({ loose }) => loose)).toHaveLength(1);
  expect([0, 6]).toContain(taken.reduce((sum, { held }) => sum + held, 0));
  const { lids } = bodyOf(await hall.buy.households.Dell.caller.get(`${storehouse.path}/lids`));
  expect(lids.find(({ code }: Jar) => code === first?.code).state).toBe('loose');
  const [written] = await app.admin<{ rows: number; once: number }[]>`
    select count(*)::int as rows, count(distinct (container_id, says))::int as once from book.lid_check`;
  expect(written?.rows).toBe(written?.once);
});
