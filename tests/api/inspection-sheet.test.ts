import { FINDING_WORDS, type Finding, lookGroupsOf } from '@sheafbook/keeping';
import { readCode, spellCode } from '@sheafbook/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  inspectionSheetEn,
  inspectionSheetEs,
} from '../../apps/api/src/features/paper/words/inspection-sheet.ts';
import { en } from '../../apps/web/src/text/en/inspection.ts';
import { es } from '../../apps/web/src/text/es/inspection.ts';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { commonCans } from '../support/giving.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { stockOf } from '../support/kitchen.ts';
import { partsOf, pdfOf, printed, readStructure } from '../support/pdf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let dell: TestHousehold;
let elder: TestHousehold;
let pails: { id: string; code: string }[];
let young: { id: string; code: string };
beforeAll(async () => {
  app = await openTestApp(); // 1 September 2026
  storehouse = await aStorehouse(app);
  dell = await aHousehold(app, storehouse, 'Dell');
  elder = await aHousehold(app, storehouse, 'Elder');
  const { bringIn, bringCan } = await stockOf(storehouse, dell);
  await bringIn({ count: 5, packedOn: '2025-06-01', treatment: 'oxygen-absorber' });
  pails = await bringIn({ kind: 'pail-6-gallon-bare', count: 2, gramsEach: 9000, packedOn: '2025-12-01' });
  young = await bringCan({ packedOn: '2026-08-01' });
  const cellar = { of: 'household', name: 'Cellar', kind: 'cellar', isLit: false, isDamp: false };
  const place = bodyOf(await dell.caller.post(at('/places'), { ...cellar, isRodentProof: true }), 201);
  const move = { containerIds: [pails[0]?.id], placeId: place.id, movedOn: '2026-02-01' };
  bodyOf(await dell.caller.post(at('/container-moves'), move), 201);
  // A leak holds what was closed with it, and has it looked at.
  const [leaking] = await bringIn({ food: 'rice-white-long', count: 3, packedOn: '2026-07-01' });
  const found = { how: 'outside', findings: ['leak'], outcome: 'discard' };
  bodyOf(await dell.caller.post(at(`/containers/${leaking?.id}/inspections`), found), 201);
  await commonCans(storehouse, [{ food: 'rice-white-long', grams: 2000, count: 1, stored: '2025-01' }]);
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const sheet = (query = 'language=en') => at(`/inspections/papers/sheet?${query}`);
const toLookAt = async (caller: Caller, of = 'household') =>
  bodyOf(await caller.get(at(`/inspections/due?of=${of}`)));
const plain = (text: string | undefined) => (text ?? '').replaceAll(/\s+/g, ' ').trim();
/** The cells of each row of each table, without its head. */
async function rowsOf(caller: Caller, path: string): Promise<string[][]> {
  const pages = await readStructure(pdfOf(await caller.get(path)));
  return pages
    .flatMap((page) => partsOf(page, 'TR'))
    .map((row) => partsOf(row, 'TD').map(({ text }) => plain(text)))
    .filter(([first]) => first !== undefined && first !== ''); // a page names the rows of the others, empty
}
type Due = { container: { code: string; food: { nameEn: string } }; why: keyof typeof en.whys };

test('says of each container on watch or due, in the order of the page, what it is, where it stands and why', async () => {
  const { watches, due } = await toLookAt(dell.caller);
  expect([watches.length, due.length]).toEqual([2, 5]); // two beside the leak; two pails and three of five cans
  const rows = await rowsOf(dell.caller, sheet());
  const spelled = [...watches, ...due].map(({ container }: Due) => spellCode(container.code));
  expect(rows.map(([first]) => first?.slice(0, spelled[0]?.length))).toEqual(spelled);
  for (const [at, { container, why }] of (due as Due[]).entries()) {
    const [first] = rows[watches.length + at] ?? [];
    expect(first).toContain(container.food.nameEn);
    expect(first).toContain(`${en.whys[why]}; due since `);
  }
  const rowOf = (code: string | undefined) =>
    rows.find(([first]) => first?.startsWith(spellCode(code ?? '')))?.[0];
  expect(rowOf(pails[0]?.code)).toMatch(
    /packed 1 Dec 2025 Where: Cellar .*due since 30 May 2026 Looked: _+ Day: _+$/,
  );
  expect(rowOf(pails[1]?.code)).toContain('Where: Nobody said where');
  expect(rowOf(young.code)).toBeUndefined();
});

test('marks what is on hold, and says what was found beside it', async () => {
  const { watches } = await toLookAt(dell.caller);
  const rows = await rowsOf(dell.caller, sheet());
  const held = rows.filter(([first]) => first?.includes('ON HOLD'));
  expect(held.map(([first]) => first?.split(' ')[0])).toEqual(
    watches.map(({ container }: Due) => spellCode(container.code).split(' ')[0]),
  );
  for (const [first] of held)
    expect(first).toContain('It leaks, found 1 Sept 2026. Packed in the same go as that one.');
});

describe.for(['en', 'es'] as const)('in %s', (language) => {
  test('has a box for each finding of the guided look, under from outside or open, and the cautions of the page', async () => {
    const [cells] = await rowsOf(dell.caller, sheet(`language=${language}`));
    const [, outside = '', opened = ''] = cells ?? [];
    const inside = lookGroupsOf('opened').slice(lookGroupsOf('outside').length);
    const boxed = (groups: readonly { findings: readonly Finding[] }[]) =>
      ['nothing-wrong' as Finding, ...groups.flatMap(({ findings }) => findings)].map(
        (finding) => `[ ] ${FINDING_WORDS[finding].name[language]}`,
      );
    for (const [cell, groups] of [
      [outside, lookGroupsOf('outside')],
      [opened, inside],
    ] as const) {
      for (const box of boxed(groups)) expect(cell).toContain(box);
      expect(cell.split('[ ]').length - 1).toBe(boxed(groups).length);
    }
    const page = { en, es }[language];
    const { text } = await printed(dell.caller, sheet(`language=${language}`));
    for (const says of [page.outsideFirst, page.onWatchSays, page.howOften, page.planningAid])
      expect(plain(text)).toContain(says);
  });

  test('says what the page says, letter for letter', () => {
    const [paper, page] = [{ en: inspectionSheetEn, es: inspectionSheetEs }[language], { en, es }[language]];
    for (const key of [
      'outsideFirst',
      'onWatch',
      'onWatchSays',
      'sameWindow',
      'due',
      'howOften',
      'planningAid',
    ] as const)
      expect(paper[key]).toBe(page[key]);
    expect(paper.whys).toEqual(page.whys);
    expect(paper.because('x', 'y')).toBe(page.because('x', 'y'));
    expect(paper.dueSince('x', 'y')).toBe(page.dueSince('x', 'y'));
    for (const count of [0, 1, 2]) expect(paper.toLook(count)).toBe(page.waiting(count));
  });
});

test('is read in Spanish, and in large on either sheet each row has all its cells', async () => {
  expect((await printed(dell.caller, sheet('language=es'))).text).toContain('Hoja de revisión');
  for (const size of ['a4', 'letter']) {
    const rows = await rowsOf(dell.caller, sheet(`language=es&large=true&size=${size}`));
    expect(rows.map((cells) => cells.length)).toEqual(Array.from({ length: 7 }, () => 3));
    const { pages } = await printed(dell.caller, sheet(`language=es&large=true&size=${size}`));
    for (const { texts, width } of pages)
      expect(Math.max(...texts.map(({ right }) => right))).toBeLessThan(width);
  }
});

test('its code leads its own household back, and nobody else; common stock’s leads who looks after it', async () => {
  const own = await printed(dell.caller, sheet());
  const code = own.pages[0]?.qr.split('/').at(-1) ?? '';
  expect(readCode(code)).toBe(code);
  expect(own.text).toContain(spellCode(code));
  expect(bodyOf(await dell.caller.get(at(`/papers/${code}`)))).toMatchObject({
    ...{ kind: 'inspection-sheet', householdId: dell.householdId },
  });
  for (const stranger of [elder.caller, storehouse.coordinator])
    expect(await stranger.get(at(`/papers/${code}`))).toMatchObject({
      status: 403,
      body: { code: 'not-your-household' },
    });
  const common = sheet('of=common&language=en');
  expect(await dell.caller.get(common)).toMatchObject({ status: 403, body: { code: 'duty-missing' } });
  const { due } = await toLookAt(storehouse.coordinator, 'common');
  expect(due).toHaveLength(1);
  const [[first] = []] = await rowsOf(storehouse.coordinator, common);
  expect(first).toContain(spellCode(due[0].container.code));
  const commonCode = (await printed(storehouse.coordinator, common)).pages[0]?.qr.split('/').at(-1);
  expect(bodyOf(await storehouse.coordinator.get(at(`/papers/${commonCode}`)))).toMatchObject({
    householdId: null,
  });
  expect(await dell.caller.get(at(`/papers/${commonCode}`))).toMatchObject({ status: 403 });
});

test('another member’s sheet has nothing of it', async () => {
  const { text } = await printed(elder.caller, sheet());
  expect(text).toContain('Nothing has to be looked at');
  const { watches, due } = await toLookAt(dell.caller);
  for (const { container } of [...watches, ...due]) expect(text).not.toContain(spellCode(container.code));
});
