import type { KeepingClass } from '@sheafbook/foods';
import { LABEL_FACTS } from '@sheafbook/giving';
import { FOOD_BANDS, isInsectDamaged, lifeBandOf, PACK_BANDS, type PackClass } from '@sheafbook/keeping';
import { describe, expect, test } from 'vitest';
import { giftEn, giftEs } from '../../apps/api/src/features/paper/words/giving.ts';
import { en } from '../../apps/web/src/text/en/giving.ts';
import { es } from '../../apps/web/src/text/es/giving.ts';

// Years at about 70 °F, dry and low in fat. A published figure names where it stands; what is common practice says so.
describe('what a pack allows', () => {
  const rows: readonly (readonly [PackClass, low: number, high: number, mark: RegExp])[] = [
    ['open-sack', 0.5, 1, /common practice/],
    ['bare-pail', 2, 5, /pail leaflet.*years are common practice/],
    ['foil-oxygen-free', 20, 25, /common practice/],
    ['glass-oxygen-free', 20, 30, /as a can while dark and unbroken; common practice/],
    ['can-oxygen-free', 30, 30, /facpub\/32/],
    ['pet-oxygen-free', 5, 10, /published container page/],
  ];
  test.for(rows)('%s: %d to %d years', ([pack, low, high, mark]) => {
    expect(PACK_BANDS[pack]).toMatchObject({ low, high, source: expect.stringMatching(mark) });
    expect(PACK_BANDS[pack].isEstimate).toBe(/common practice/.test(PACK_BANDS[pack].source));
  });
});

describe('what a food allows in a No. 10 can without oxygen', () => {
  const CANNED = /university and a church welfare service/;
  const USU = /Utah State University Extension/;
  const rows: readonly (readonly [KeepingClass, low: number, high: number, mark: RegExp])[] = [
    ['whole-grain-hard', 30, 30, CANNED], // wheat, whole corn
    ['white-rice', 30, 30, CANNED],
    ['sugar', 30, 30, CANNED],
    ['rolled-oats', 30, 30, CANNED],
    ['pasta', 30, 30, CANNED],
    ['dry-legume', 30, 30, CANNED], // pinto, black and white beans
    ['dry-milk', 20, 20, CANNED],
    ['hulled-barley', 2, 8, USU], // 2 recommended, 8 at the most
    ['brown-rice', 0.5, 1, USU], // 6 months; a year where it stood cold
    ['oil', 1, 2, /university page: about 2 years/],
    ['salt', 30, 30, /indefinite if dry; common practice/], // shown as the longest there is
  ];
  test.for(rows)('%s: %d to %d years', ([food, low, high, mark]) => {
    expect(FOOD_BANDS[food]).toMatchObject({ low, high, source: expect.stringMatching(mark) });
    expect(lifeBandOf(food, 'can-oxygen-free')).toMatchObject({ low, high });
  });

  test('white flour is published with 10 years and more; half of it is kept as the least, and never more is shown', () => {
    expect(FOOD_BANDS['white-flour']).toMatchObject({ low: 5, likely: 10, high: 10 });
  });

  test('nothing is ever shown to keep over 30 years, and every band is in order and sourced', () => {
    for (const band of [...Object.values(PACK_BANDS), ...Object.values(FOOD_BANDS)]) {
      expect(band.low <= band.likely && band.likely <= band.high && band.high <= 30).toBe(true);
      expect(band.source).not.toBe('');
    }
  });
});

// 7 CFR 810.2204: 31 in 100 g are the most any numbered grade allows. FDA CPG 578.300: 32 and more are its action level.
test.for([
  { kernels: 31, grams: 100, isDamaged: false },
  { kernels: 32, grams: 100, isDamaged: true },
  { kernels: 64, grams: 200, isDamaged: true },
  { kernels: 63, grams: 200, isDamaged: true }, // 31.5: how to round is not stated, so it fails
  { kernels: 62, grams: 200, isDamaged: false },
])('$kernels damaged kernels in $grams g: $isDamaged', ({ kernels, grams, isDamaged }) => {
  expect(isInsectDamaged(kernels, grams)).toBe(isDamaged);
});

describe('what the law says beside a gift, on the page and on the paper, in both languages', () => {
  const said = [en.law, es.law, JSON.stringify(giftEn), JSON.stringify(giftEs)];
  test.for(said.map((text, position) => ({ text, position })))('$position', ({ text }) => {
    expect(text).toContain('42 U.S.C. 1791');
    expect(text).toContain('P.L. 117-362');
    // Good faith only, never over local health rules, and a group of households gives through a nonprofit.
    expect(text).toMatch(/good faith|buena fe/);
    expect(text).toMatch(/[Gg]ross negligence|negligencia grave/);
    expect(text).toMatch(
      /state or local health rules|(normas sanitarias|normas de salud) estatales o locales/,
    );
    expect(text).toMatch(/through a nonprofit|sin (ánimo|fines) de lucro/);
  });
});

// FDA Food Code 3-602.11 and 21 CFR 101: name, ingredients where there are two or more, net mass, allergens, packer; the day
// it was packed is asked beside them. No date is required by federal law except on infant formula.
test('a card may ask for each fact that a label of repacked food has', () => {
  expect([...LABEL_FACTS].toSorted()).toEqual(
    ['allergens', 'ingredients', 'net-mass', 'pack-date', 'packer', 'product'].toSorted(),
  );
});
