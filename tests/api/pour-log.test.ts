import { codeFromNumber, isCode } from '@sheafbook/units';
import jsqr from 'jsqr';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
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
import { piecesOf } from '../support/shelf.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let day: string;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
});
beforeEach(async () => {
  day = await aPackingSession(storehouse, hall, { lines: 2 });
});
afterAll(() => app.close());

const lead = () => hall.lead.caller;
const start = async () => bodyOf(await lead().post(`${day}/start`));
const pour = (wish: Parameters<typeof aPourBody>[1]) => lead().post(`${day}/pours`, aPourBody(hall, wish));
const log = async () => bodyOf(await lead().get(`${day}/log`));
const leave = (wish: Record<string, unknown>) => lead().put(`${day}/left`, { ...at('Ashdown'), ...wish });
const at = (name: keyof TestHall['wheat']) => ({
  bagId: hall.wheat[name].bagId,
  householdId: hall.buy.households[name].householdId,
});
const partsOf = (body: { mass: Record<string, number> }) => body.mass;

test('containers are filled from a household’s part of a bag, with codes, serials of their line and their own grams', async () => {
  await start();
  const brought = await bringWheat(hall, day, 'Dell');
  const filled = bodyOf(await pour({ name: 'Dell', grams: [2000, 2010, 1995] }), 201);
  expect(filled.containers.map(({ serial }: { serial: number }) => serial)).toEqual([1, 2, 3]);
  expect(filled.containers.every(({ code }: { code: string }) => isCode(code))).toBe(true);
  bodyOf(await pour({ name: 'Dell', line: 2, grams: [2000] }), 201);
  const more = bodyOf(await pour({ name: 'Dell', grams: [2000] }), 201);
  expect(more.containers[0].serial).toBe(4);
  const { caller } = hall.buy.households.Dell;
  const shown = bodyOf(await caller.get(`${storehouse.path}/containers/${filled.containers[1].id}`));
  expect(shown).toMatchObject({ grams: 2010, kind: { code: 'can-no-10' }, treatment: 'oxygen-absorber' });
  expect(partsOf(await log())).toMatchObject({
    broughtGrams: brought,
    inContainersGrams: 10_005,
    leftInBagsGrams: brought - 10_005,
    unaccountedGrams: 0,
  });
});

test('over-pouring is told as it happens: a single pour, a mean, and a can that somebody would lose', async () => {
  bodyOf(
    await hall.buy.households.Birchall.caller.put(`${day}/wishes`, {
      wishes: [cansOf(hall, { containers: 10, gramsEach: 1000 })],
    }),
  );
  await start();
  await bringWheat(hall, day, 'Birchall');
  bodyOf(await pour({ name: 'Birchall', targetGrams: 1000, grams: [1010, 1060, 1020] }), 201);
  const { pours } = await log();
  expect(pours.map(({ excessGrams }: { excessGrams: number }) => excessGrams)).toEqual([10, 70, 90]);
  expect(pours.map(({ alarms }: { alarms: string[] }) => alarms)).toEqual([[], ['single'], []]);
  bodyOf(await pour({ name: 'Birchall', targetGrams: 1000, grams: [1170] }), 201);
  // 260 g over after 4 of 10: going on like this 390 g more, and less than half a can is spare at 500.
  expect((await log()).pours[3]).toMatchObject({ excessGrams: 260, alarms: ['single'] });
  bodyOf(await pour({ name: 'Birchall', targetGrams: 1000, grams: [1300] }), 201);
  expect((await log()).pours[4].alarms).toEqual(['single', 'mean', 'shortage']);
});

describe('refused, and nothing is changed', () => {
  test('a pour before the line begins, from a bag that did not come, past the brim, beyond what is left, on no line', async () => {
    await expectRefused(() => pour({ name: 'Ashdown', grams: [1000] }), refused(409, 'session-stage-wrong'));
    await start();
    await expectRefused(() => pour({ name: 'Ashdown', grams: [1000] }), refused(404, 'thing-not-found'));
    const brought = await bringWheat(hall, day, 'Ashdown');
    await expectRefused(
      () => pour({ name: 'Ashdown', grams: [1000, 3300] }),
      refused(422, 'over-capacity', 'grams.1'),
    );
    const tooMany = Array.from({ length: Math.ceil((brought + 1) / 2500) }, () => 2500);
    await expectRefused(
      () => pour({ name: 'Ashdown', grams: tooMany }),
      refused(409, 'not-enough-left', `grams.${tooMany.length - 1}`),
    );
    await expectRefused(
      () => pour({ name: 'Ashdown', line: 3, grams: [1000] }),
      refused(400, 'invalid-input', 'line'),
    );
    await expectRefused(
      () => pour({ name: 'Ashdown', grams: [1000], pouredAt: '2027-01-01T00:00:00Z' }),
      refused(400, 'invalid-input', 'pouredAt'),
    );
  });

  test('a loss larger than what is in the bag, more packets left than were there, a pack shut twice', async () => {
    await start();
    const brought = await bringWheat(hall, day, 'Ashdown');
    const loss = { ...at('Ashdown'), grams: brought + 1, to: 'spilled' };
    await expectRefused(() => lead().post(`${day}/losses`, loss), refused(409, 'not-enough-left', 'grams'));
    const pack = bodyOf(
      await lead().post(`${day}/absorber-packs`, { sizeMillilitres: 300, packets: 25 }),
      201,
    );
    const shut = (packetsLeft: number) =>
      lead().post(`${day}/absorber-packs/${pack.id}/shutting`, { packetsLeft });
    await expectRefused(() => shut(26), refused(400, 'invalid-input', 'packetsLeft'));
    const before = { packetsLeft: 5, shutAt: new Date(Date.parse(pack.openedAt) - 60_000).toISOString() };
    await expectRefused(
      () => lead().post(`${day}/absorber-packs/${pack.id}/shutting`, before),
      refused(400, 'invalid-input', 'shutAt'),
    );
    expect(bodyOf(await shut(5))).toMatchObject({ packetsLeft: 5, state: 'shut' });
    await expectRefused(() => shut(5), refused(409, 'already-there'));
    // What was opened without a signal counts from then, and nothing was opened in time to come.
    const opened = (minutes: number) =>
      lead().post(`${day}/absorber-packs`, {
        ...{ sizeMillilitres: 300, packets: 25 },
        openedAt: new Date(app.clock.now.getTime() + minutes * 60_000).toISOString(),
      });
    await expectRefused(() => opened(30), refused(400, 'invalid-input', 'openedAt'));
    expect(bodyOf(await opened(-17), 201)).toMatchObject({
      openedAt: new Date(app.clock.now.getTime() - 17 * 60_000).toISOString(),
    });
  });

  const expectRefused = async (
    call: Parameters<typeof refusalOf>[1],
    wanted: ReturnType<typeof refused>,
  ): Promise<void> => {
    expect(await refusalOf(app, call)).toMatchObject(wanted);
  };
});

test('a pour is taken back whole while nobody has eaten of it, and its serials are not used again', async () => {
  await start();
  const brought = await bringWheat(hall, day, 'Dell');
  const { entryId, containers } = bodyOf(await pour({ name: 'Dell', grams: [1500, 1500] }), 201);
  const undo = () => lead().post(`${day}/pours/${entryId}/undoing`, { reason: 'the wrong bag' });
  bodyOf(await undo(), 201);
  expect(await undo()).toMatchObject({ body: { code: 'already-reversed' } });
  const { caller } = hall.buy.households.Dell;
  expect(bodyOf(await caller.get(`${storehouse.path}/containers/${containers[0].id}`)).grams).toBe(0);
  expect(partsOf(await log())).toMatchObject({ inContainersGrams: 0, leftInBagsGrams: brought });
  const again = bodyOf(await pour({ name: 'Dell', grams: [1500] }), 201);
  expect(again.containers[0].serial).toBe(3);
  const eaten = { grams: 100, to: 'eaten' };
  bodyOf(await caller.post(`${storehouse.path}/containers/${again.containers[0].id}/uses`, eaten), 201);
  const late = await lead().post(`${day}/pours/${again.entryId}/undoing`, { reason: 'late' });
  expect(late).toMatchObject({ body: { code: 'cannot-reverse', containers: [again.containers[0].code] } });
  const generic = await hall.buy.treasurer.post(`${storehouse.path}/entries/${again.entryId}/reversal`, {
    reason: 'elsewhere',
  });
  expect(generic).toMatchObject({ status: 409, body: { code: 'cannot-reverse' } });
});

test('a retry after a lost signal counts once', async () => {
  await start();
  await bringWheat(hall, day, 'Dell');
  const once = { 'Idempotency-Key': 'a phones own key' };
  const send = () => lead().post(`${day}/pours`, aPourBody(hall, { name: 'Dell', grams: [900] }), once);
  const [first, second] = [bodyOf(await send(), 201), bodyOf(await send(), 201)];
  expect(second).toEqual(first);
  expect((await log()).pours).toHaveLength(1);
});

describe('the mass of a session', () => {
  test('is signed once everything is weighed: in = containers + left + spilled + sampled + dust, to the gram', async () => {
    await start();
    const brought = await bringWheat(hall, day, 'Ashdown');
    bodyOf(await pour({ name: 'Ashdown', grams: [2000] }), 201);
    for (const [to, grams] of [
      ['spilled', 31],
      ['sampled', 25],
    ] as const)
      bodyOf(await lead().post(`${day}/losses`, { ...at('Ashdown'), grams, to }), 201);
    const early = await lead().post(`${day}/signing`);
    expect(early).toMatchObject({ status: 409, body: { code: 'cannot-sign' } });
    const expected = brought - 2000 - 31 - 25;
    bodyOf(await leave({ leftGrams: expected - 12 }));
    expect(partsOf(await log())).toMatchObject({ unaccountedGrams: 12, isWeighed: true });
    const signed = bodyOf(await lead().post(`${day}/signing`), 201);
    expect(signed).toMatchObject({ stage: 'signed', signedAt: expect.any(String) });
    expect(signed.bags[0]).toMatchObject({ leftInBagsGrams: expected - 12, unaccountedGrams: 12 });
    const { bags } = bodyOf(await hall.buy.households.Ashdown.caller.get(`${storehouse.path}/own-bags`));
    const own = bags.find(({ bagId }: { bagId: string }) => bagId === at('Ashdown').bagId);
    expect(own.grams).toBe(expected - 12);
    expect(await pour({ name: 'Ashdown', grams: [100] })).toMatchObject({
      body: { code: 'session-stage-wrong' },
    });
  });

  test('is not signed beyond what dust and scales explain, unless somebody says why', async () => {
    await start();
    const brought = await bringWheat(hall, day, 'Ashdown');
    bodyOf(await leave({ leftGrams: brought - 500 }));
    expect((await lead().post(`${day}/signing`)).body.detail).toContain('500 g of');
    bodyOf(await leave({ leftGrams: brought - 500, because: 'A scoop was taken home by mistake.' }));
    bodyOf(await lead().post(`${day}/signing`), 201);
  });
});

describe('under a label made ahead', () => {
  const labels = async (name: keyof TestHall['wheat'], count: number, wish: Record<string, unknown> = {}) => {
    const containerKindId = hall.shelves.kinds['can-no-10'];
    const body = { ...at(name), containerKindId, treatment: 'oxygen-absorber', count, ...wish };
    const made = bodyOf(await lead().post(`${day}/labels`, body), 201).labels;
    return made.map(({ code }: { code: string }) => code) as string[];
  };
  const wanting = async (name: keyof TestHall['wheat']) =>
    bodyOf(
      await hall.buy.households[name].caller.put(`${day}/wishes`, {
        wishes: [cansOf(hall, { containers: 1, gramsEach: 1000 })],
      }),
    );
  const blankOf = async (codes: readonly string[]) =>
    bodyOf(await lead().get(`${day}/labels`))
      .labels.map(({ code }: { code: string }) => code)
      .filter((code: string) => codes.includes(code));
  const under = (codes: (string | null)[], name: keyof TestHall['wheat'] = 'Birchall') =>
    lead().post(`${day}/pours`, { ...aPourBody(hall, { name, grams: codes.map(() => 1000) }), codes });
  const swapped = (code: string) => {
    const place = [...code].findIndex((sign, index) => index > 0 && sign !== code[index - 1]);
    return `${code.slice(0, place - 1)}${code[place]}${code[place - 1]}${code.slice(place + 1)}`;
  };

  test('a pour names it as it was typed, others get codes of their own, and the label is blank no more', async () => {
    await wanting('Birchall');
    const [first = '', second = ''] = await labels('Birchall', 2);
    expect(await blankOf([first, second])).toEqual([first, second]);
    await start();
    await bringWheat(hall, day, 'Birchall');
    const typed = ` ${second.slice(0, 3).toLowerCase()}-${second.slice(3)}`;
    const { containers } = bodyOf(await under([null, typed]), 201);
    expect(containers[1].code).toBe(second);
    expect([first, second]).not.toContain(containers[0].code);
    expect(await blankOf([first, second])).toEqual([first]);
    const { caller } = hall.buy.households.Birchall;
    const shown = bodyOf(await caller.get(`${storehouse.path}/containers/${containers[1].id}`));
    expect(shown).toMatchObject({ code: second, grams: 1000, treatment: 'oxygen-absorber' });
  });

  test('a pour before the planned day is of the day on which it was poured, and the label is to be printed anew', async () => {
    await wanting('Birchall');
    const [early = '', late = ''] = await labels('Birchall', 2);
    await start();
    await bringWheat(hall, day, 'Birchall');
    const before = app.clock.now;
    app.clock.now = new Date('2026-12-05T03:00:00Z'); // still the fourth in Chicago
    const { containers, warnings } = bodyOf(await under([early]), 201);
    const { caller } = hall.buy.households.Birchall;
    const shown = bodyOf(await caller.get(`${storehouse.path}/containers/${containers[0].id}`));
    expect(shown.packedOn).toBe('2026-12-04');
    expect(warnings).toContain(
      'The labels made ahead say 2026-12-05; the book says 2026-12-04. Print these labels anew.',
    );
    app.clock.now = new Date('2026-12-05T18:00:00Z');
    const inTime = bodyOf(await under([late]), 201);
    expect(inTime.warnings.join()).not.toContain('made ahead');
    app.clock.now = before;
  });

  test('a code whose pour was taken back is neither unused nor on a can: it is named as spent', async () => {
    await wanting('Birchall');
    const [first = '', second = ''] = await labels('Birchall', 2);
    await start();
    await bringWheat(hall, day, 'Birchall');
    const { entryId } = bodyOf(await under([first]), 201);
    bodyOf(await lead().post(`${day}/pours/${entryId}/undoing`, { reason: 'the wrong bag' }), 201);
    const { spent } = bodyOf(await lead().get(`${day}/labels`));
    expect(spent).toMatchObject([{ code: first, household: 'Birchall' }]);
    expect(await blankOf([first, second])).toEqual([second]);
  });

  test('the sheet of labels has what is known, a mark that reads as its code, and room for the net mass', async () => {
    await wanting('Birchall');
    const codes = await labels('Birchall', 3);
    const pdf = await printed(lead(), `${day}/labels/paper?sheet=a4-8&language=en&codes=${codes}`);
    expect(pdf.pages[0]?.marks.map((mark) => jsqr(mark.data, mark.width, mark.height)?.data)).toEqual(codes);
    expect(pdf.text).toMatch(/Net _+/);
    expect(pdf.text).toMatch(/Contains wheat/);
    const foreign = codeFromNumber(800_000_000, 6);
    const call = () => lead().get(`${day}/labels/paper?sheet=a4-8&codes=${codes[0]},${foreign}`);
    expect(await refusalOf(app, call)).toMatchObject(refused(404, 'thing-not-found'));
  });

  test('one sign misread or two swapped is a slip at its place, and nothing is poured', async () => {
    await wanting('Birchall');
    const [code = '', other = ''] = await labels('Birchall', 2);
    await start();
    await bringWheat(hall, day, 'Birchall');
    const misread = `${code.slice(0, 2)}${code[2] === 'Z' ? 'Y' : 'Z'}${code.slice(3)}`;
    for (const slip of [misread, swapped(code)])
      expect(await refusalOf(app, () => under([other, slip]))).toMatchObject(
        refused(400, 'invalid-input', 'codes.1'),
      );
    expect(await refusalOf(app, () => under([code, code]))).toMatchObject(
      refused(400, 'invalid-input', 'codes'),
    );
    expect((await log()).pours).toEqual([]);
    expect(await blankOf([code, other])).toEqual([code, other]);
  });

  test('a label of nobody, of a neighbour, of another kind, one used and one on hold are each said to be so', async () => {
    await wanting('Birchall');
    await wanting('Dell');
    const [code = '', heldCode = ''] = await labels('Birchall', 2);
    const [foreign = ''] = await labels('Dell', 1);
    const [jar = ''] = await labels('Birchall', 1, { containerKindId: hall.shelves.kinds['can-no-2-5'] });
    await start();
    await bringWheat(hall, day, 'Birchall');
    bodyOf(await under([code, heldCode]), 201);
    const expectAt = async (codes: string[], wanted: ReturnType<typeof refused>) =>
      expect(await refusalOf(app, () => under(codes))).toMatchObject(wanted);
    await expectAt([codeFromNumber(800_000_000, 6)], refused(404, 'thing-not-found', 'codes.0'));
    await expectAt([foreign], refused(409, 'label-does-not-fit', 'codes.0'));
    await expectAt([jar], refused(409, 'label-does-not-fit', 'codes.0'));
    await expectAt([code], refused(409, 'label-used', 'codes.0'));
    const { containers } = bodyOf(
      await hall.buy.households.Birchall.caller.get(`${storehouse.path}/containers?limit=200`),
    );
    const { id } = containers.find((one: { code: string }) => one.code === heldCode);
    const hold = { of: { scope: 'containers', containerIds: [id] }, reason: 'a recall' };
    bodyOf(await storehouse.coordinator.post(`${storehouse.path}/holds`, hold), 201);
    await expectAt([heldCode], refused(409, 'on-hold', 'codes.0'));
  });

  test('two clients with one label: one fills it, the other is told that it is used', async () => {
    await wanting('Birchall');
    const [code = ''] = await labels('Birchall', 1);
    await start();
    await bringWheat(hall, day, 'Birchall');
    const answers = await Promise.all([under([code]), under([code])]);
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409]);
    expect(answers.find(({ status }) => status === 409)?.body).toMatchObject({ code: 'label-used' });
    expect((await log()).pours).toHaveLength(1);
  });
});

describe('who may not eat what is in a can', () => {
  const addEater = async (facts: Record<string, unknown>) => {
    const { caller, householdId } = hall.buy.households.Ashdown;
    const eater = { birthOn: '1990', ...facts };
    bodyOf(await caller.post(`${storehouse.path}/households/${householdId}/eaters`, eater), 201);
  };
  /** A can of Ashdown's oats off a line; gives its container. */
  const aCanOfOats = async (line: number): Promise<string> => {
    const { Ashdown } = hall.buy.households;
    const [oats] = await piecesOf(storehouse, hall.buy.splitIds.oats, Ashdown);
    const bag = { bagId: oats?.bagId, householdId: Ashdown.householdId };
    bodyOf(await lead().post(`${day}/bags`, bag));
    const facts = aPourBody(hall, { name: 'Ashdown', line, grams: [500], treatment: 'none' });
    return bodyOf(await lead().post(`${day}/pours`, { ...facts, ...bag }), 201).containers[0].id;
  };
  const eatersOf = async (containerId: string) =>
    bodyOf(
      await hall.buy.households.Ashdown.caller.get(`${storehouse.path}/containers/${containerId}/eaters`),
    );

  test('is told by name and reason, and who should take care after what its line ran before it', async () => {
    await addEater({ name: 'Ida' });
    await addEater({ name: 'Cy', excludedAllergens: ['wheat'] });
    await addEater({ name: 'Gil', avoidsGluten: true });
    await start();
    await bringWheat(hall, day, 'Ashdown');
    const clean = await aCanOfOats(1);
    const gil = { name: 'Gil', allergens: [], isFoodExcluded: false, hasGluten: true };
    expect(await eatersOf(clean)).toEqual({ mayNotEat: [gil], mayHaveMet: [] });
    const { containers } = bodyOf(await pour({ name: 'Ashdown', grams: [1000] }), 201);
    const cy = { name: 'Cy', allergens: ['wheat'], isFoodExcluded: false, hasGluten: false };
    expect(await eatersOf(containers[0].id)).toEqual({ mayNotEat: [cy, gil], mayHaveMet: [] });
    const after = await eatersOf(await aCanOfOats(1));
    expect(after.mayNotEat).toEqual([gil]);
    expect(after.mayHaveMet).toMatchObject([{ name: 'Cy', foods: [{ nameEn: 'Hard red winter wheat' }] }]);
    expect((await eatersOf(await aCanOfOats(2))).mayHaveMet).toEqual([]);
  });

  test('is nobody else’s to ask', async () => {
    await start();
    await bringWheat(hall, day, 'Ashdown');
    const { containers } = bodyOf(await pour({ name: 'Ashdown', grams: [1000] }), 201);
    const path = `${storehouse.path}/containers/${containers[0].id}/eaters`;
    const call = () => hall.buy.households.Dell.caller.get(path);
    expect(await refusalOf(app, call)).toMatchObject(refused(404, 'thing-not-found'));
  });
});
