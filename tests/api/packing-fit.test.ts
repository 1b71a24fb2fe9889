import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import {
  aPackingSession,
  aPourBody,
  bringWheat,
  cansOf,
  measureWheat,
  openHall,
  type TestHall,
} from '../support/packing.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

const UNMEASURED =
  'Nobody has measured its moisture. Above 10 % it can grow botulism without oxygen: measure it first.';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let day: string;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
});
beforeEach(async () => {
  day = await aPackingSession(storehouse, hall);
  await measureWheat(hall, storehouse, 'Dell', null);
});
afterAll(() => app.close());

const kindId = (code: string) => hall.shelves.kinds[code] ?? '';
const dell = () => hall.buy.households.Dell.caller;
const wish = (change: Parameters<typeof cansOf>[1]) => () =>
  dell().put(`${day}/wishes`, { wishes: [cansOf(hall, { containers: 1, ...change })] });
const pour = (change: Partial<Parameters<typeof aPourBody>[1]>, headers?: Record<string, string>) => () =>
  hall.lead.caller.post(`${day}/pours`, aPourBody(hall, { name: 'Dell', grams: [2000], ...change }), headers);
const begin = async () => {
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  await bringWheat(hall, day, 'Dell');
};

describe('a household’s wish that no line can pack is refused at its field, with the nearest that fits', () => {
  test('dry ice in a can: an absorber instead', async () => {
    const call = wish({ treatment: 'dry-ice' });
    expect(await refusalOf(app, call)).toEqual(refused(422, 'treatment-does-not-fit', 'wishes.0.treatment'));
    expect((await call()).body).toMatchObject({
      misfits: ['dry-ice-in-metal'],
      nearest: { containerKindId: kindId('can-no-10'), treatment: 'oxygen-absorber', gramsEach: 2500 },
    });
  });

  test('an absorber in a bare pail: dry ice instead', async () => {
    const call = wish({ containerKindId: kindId('pail-5-gallon-bare'), gramsEach: 9000 });
    expect(await refusalOf(app, call)).toEqual(refused(422, 'treatment-does-not-fit', 'wishes.0.treatment'));
    const { misfits, nearest, detail } = (await call()).body;
    expect({ misfits, nearest, detail }).toEqual({
      misfits: ['barrier-leaks'],
      nearest: { containerKindId: kindId('pail-5-gallon-bare'), treatment: 'dry-ice', gramsEach: 9000 },
      detail: 'The wall of this container lets air through, so this would do nothing that lasts.',
    });
  });

  test('a can too small: the smallest container that holds it', async () => {
    const call = wish({ containerKindId: kindId('can-no-2-5'), gramsEach: 2500 });
    expect(await refusalOf(app, call)).toEqual(refused(422, 'over-capacity', 'wishes.0.gramsEach'));
    expect((await call()).body.nearest).toEqual({
      ...{ containerKindId: kindId('can-no-10'), treatment: 'oxygen-absorber', gramsEach: 2500 },
    });
  });

  test('what is known to be too moist, in Spanish too; and a modest way is never refused', async () => {
    await measureWheat(hall, storehouse, 'Dell', 115);
    const call = wish({});
    expect(await refusalOf(app, call)).toEqual(refused(422, 'treatment-does-not-fit', 'wishes.0.treatment'));
    const body = { wishes: [cansOf(hall, { containers: 1 })] };
    const said = await dell().put(`${day}/wishes`, body, { 'Accept-Language': 'es' });
    expect(said.body.fields[0].message).toMatch(/^Con más de 10 % de humedad/);
    expect(said.body.nearest).toMatchObject({ treatment: 'freeze-thaw-freeze' });
    bodyOf(await wish({ treatment: 'none' })());
  });

  test('a moisture that nobody measured is warned of, until somebody measures it', async () => {
    expect(bodyOf(await wish({})()).wishes).toMatchObject([{ containers: 1, warnings: [UNMEASURED] }]);
    await measureWheat(hall, storehouse, 'Dell', 95);
    expect(bodyOf(await dell().get(day)).wishes).toMatchObject([{ warnings: [] }]);
    await measureWheat(hall, storehouse, 'Dell', 115);
    const [{ warnings }] = bodyOf(await dell().get(day)).wishes;
    expect(warnings).toEqual([expect.stringMatching(/^With more than 10 % moisture/)]);
  });
});

describe('a pour that is not safe is refused at the line, and nothing is poured', () => {
  test('dry ice in a can, and wheat that was measured to be too moist', async () => {
    await begin();
    const ice = pour({ treatment: 'dry-ice' });
    expect(await refusalOf(app, ice)).toEqual(refused(422, 'treatment-does-not-fit', 'treatment'));
    expect((await ice()).body.nearest).toMatchObject({ treatment: 'oxygen-absorber', gramsEach: 2000 });
    await measureWheat(hall, storehouse, 'Dell', 101);
    const moist = pour({});
    expect(await refusalOf(app, moist)).toEqual(refused(422, 'treatment-does-not-fit', 'treatment'));
    expect((await moist()).body).toMatchObject({
      misfits: ['too-moist-without-oxygen'],
      nearest: { treatment: 'freeze-thaw-freeze' },
    });
  });

  // 2,000 g of wheat in a No. 10 can leave 0.4 × 2,464 mL between the kernels and 644 mL above them: 1,629 mL of air, 329 mL to
  // take up. 300 is too little, 500 is enough.
  test('an absorber too small for the air in the can, and packets without the treatment that uses them', async () => {
    await begin();
    const small = pour({ absorberMillilitres: 300 });
    expect(await refusalOf(app, small)).toEqual(
      refused(422, 'treatment-does-not-fit', 'absorberMillilitres'),
    );
    const { misfits, absorberMillilitres, detail } = (await small()).body;
    expect({ misfits, absorberMillilitres }).toEqual({
      misfits: ['absorber-too-small'],
      absorberMillilitres: 500,
    });
    expect(detail).toMatch(/needs packets for 3\d\d ml of oxygen; these take up 300 ml\.$/);
    const inSpanish = (await pour({ absorberMillilitres: 300 }, { 'Accept-Language': 'es' })()).body;
    expect(inSpanish.detail).toMatch(/Lata n\.º 10 .*Trigo duro rojo de invierno/);
    expect(inSpanish.fields[0].message).toBe(inSpanish.detail);
    const none = pour({ treatment: 'none', absorberMillilitres: 300 });
    expect(await refusalOf(app, none)).toEqual(refused(400, 'invalid-input', 'absorberMillilitres'));
    bodyOf(await pour({ absorberMillilitres: 500 })(), 201);
    const { pours } = bodyOf(await hall.lead.caller.get(`${day}/log`));
    expect(pours).toMatchObject([{ absorberMillilitres: 500, treatment: 'oxygen-absorber' }]);
  });

  test('an unmeasured bag is poured with a word, a measured one without, and its can keeps the figure', async () => {
    await begin();
    expect(bodyOf(await pour({})(), 201).warnings).toContain(UNMEASURED);
    await measureWheat(hall, storehouse, 'Dell', 95);
    const { warnings, containers } = bodyOf(await pour({})(), 201);
    expect(warnings).toEqual([]);
    const can = bodyOf(await dell().get(`${storehouse.path}/containers/${containers[0].id}`));
    expect(can.moistureTenths).toBe(95);
  });
});

test('the plan says which packets go into each container', async () => {
  bodyOf(await wish({})());
  const { lines } = bodyOf(await hall.lead.caller.get(`${day}/plan`));
  // A level No. 10 can of wheat, 2,500 g: some 1,265 mL of air, one packet of 300.
  expect(lines[0].runs[0].packets).toEqual([{ sizeMillilitres: 300, count: 1 }]);
});
