import { dailyKilocalories, type EaterFacts, ENERGY_TABLE } from '@sheafbook/coverage';
import { fraction } from '@sheafbook/units';
import { describe, expect, test } from 'vitest';

const TODAY = '2026-07-01';

/** Someone of a completed age on 1 July 2026; nothing else is known of them. */
function anEater(years: number, facts: Partial<EaterFacts>): EaterFacts {
  return {
    eaterId: 'eater',
    birthOn: `${2026 - years}-01-01`,
    sex: 'female',
    activity: 'sedentary',
    presentPercent: 100,
    heightCentimetres: null,
    massKilograms: null,
    typedKilocalories: null,
    excludedAllergens: [],
    excludedFoodCodes: [],
    avoidsGluten: false,
    ...facts,
  };
}

// Dietary Guidelines for Americans 2020-2025 (USDA and HHS), appendix 2, table A2-2: males sedentary, moderately
// active, active; females the same. Read in a transcription of the printed appendix, not in the print itself; ages 2
// to 20 also in the 2015 edition's table A2-1.
const TABLE_A2_2 = `
2        1,000 1,000 1,000  1,000 1,000 1,000
3        1,000 1,400 1,400  1,000 1,200 1,400
4        1,200 1,400 1,600  1,200 1,400 1,400
5        1,200 1,400 1,600  1,200 1,400 1,600
6        1,400 1,600 1,800  1,200 1,400 1,600
7        1,400 1,600 1,800  1,200 1,600 1,800
8        1,400 1,600 2,000  1,400 1,600 1,800
9        1,600 1,800 2,000  1,400 1,600 1,800
10       1,600 1,800 2,200  1,400 1,800 2,000
11       1,800 2,000 2,200  1,600 1,800 2,000
12       1,800 2,200 2,400  1,600 2,000 2,200
13       2,000 2,200 2,600  1,600 2,000 2,200
14       2,000 2,400 2,800  1,800 2,000 2,400
15       2,200 2,600 3,000  1,800 2,000 2,400
16       2,400 2,800 3,200  1,800 2,000 2,400
17       2,400 2,800 3,200  1,800 2,000 2,400
18       2,400 2,800 3,200  1,800 2,000 2,400
19-20    2,600 2,800 3,000  2,000 2,200 2,400
21-25    2,400 2,800 3,000  2,000 2,200 2,400
26-30    2,400 2,600 3,000  1,800 2,000 2,400
31-35    2,400 2,600 3,000  1,800 2,000 2,200
36-40    2,400 2,600 2,800  1,800 2,000 2,200
41-45    2,200 2,600 2,800  1,800 2,000 2,200
46-50    2,200 2,400 2,800  1,800 2,000 2,200
51-55    2,200 2,400 2,800  1,600 1,800 2,200
56-60    2,200 2,400 2,600  1,600 1,800 2,200
61-65    2,000 2,400 2,600  1,600 1,800 2,000
66-70    2,000 2,200 2,600  1,600 1,800 2,000
71-75    2,000 2,200 2,600  1,600 1,800 2,000
76-110   2,000 2,200 2,400  1,600 1,800 2,000`;

const COLUMNS = [
  ['male', 'sedentary'],
  ['male', 'moderate'],
  ['male', 'active'],
  ['female', 'sedentary'],
  ['female', 'moderate'],
  ['female', 'active'],
] as const;

const rows = TABLE_A2_2.trim()
  .split('\n')
  .map((line) => {
    const [ages = '', ...cells] = line.split(/\s+/);
    const [fromAge = 0, toAge = fromAge] = ages.split('-').map(Number);
    return { ages, fromAge, toAge, kilocalories: cells.map((cell) => Number(cell.replace(',', ''))) };
  });

test.for(rows)('an eater of $ages years needs what the guideline table says, in all six columns', (row) => {
  expect(row.kilocalories).toHaveLength(6);
  for (let years = row.fromAge; years <= row.toAge; years += 1) {
    COLUMNS.forEach(([sex, activity], column) => {
      const { kilocalories, basis } = dailyKilocalories(anEater(years, { sex, activity }), TODAY);
      expect(kilocalories).toEqual(fraction(row.kilocalories[column] ?? 0));
      expect(basis).toBe('table');
    });
  }
});

describe('the cells on which sources disagree', () => {
  // One chart of no authority shows 2,000 here; the transcription and two other texts say 1,800.
  test('women of 26 to 30, sedentary, are taken at 1,800 and the answer says that a chart differs', () => {
    const answer = dailyKilocalories(anEater(28, { sex: 'female' }), TODAY);
    expect(answer.kilocalories).toEqual(fraction(1800));
    expect(answer.note).toContain('2000');
  });

  // The same chart shows 2,400 here; the transcription says 2,600.
  test('men of 71 to 75, active, are taken at 2,600 and the answer says that a chart differs', () => {
    const answer = dailyKilocalories(anEater(73, { sex: 'male', activity: 'active' }), TODAY);
    expect(answer.kilocalories).toEqual(fraction(2600));
    expect(answer.note).toContain('2400');
  });

  test('are the only ones', () => {
    expect(ENERGY_TABLE.filter(({ conflict }) => conflict !== '').map(({ fromAge }) => fromAge)).toEqual([
      26, 71,
    ]);
  });
});

describe('the table as a whole', () => {
  // The ranges that the text of the same appendix gives beside its table.
  test.for([
    { who: 'women', fromAge: 19, toAge: 110, column: 'female', least: 1600, most: 2400 },
    { who: 'men', fromAge: 19, toAge: 110, column: 'male', least: 2000, most: 3000 },
    { who: 'boys of 2 to 8', fromAge: 2, toAge: 8, column: 'male', least: 1000, most: 2000 },
    { who: 'girls of 2 to 8', fromAge: 2, toAge: 8, column: 'female', least: 1000, most: 2000 },
    { who: 'older boys', fromAge: 9, toAge: 18, column: 'male', least: 1400, most: 3200 },
    { who: 'older girls', fromAge: 9, toAge: 18, column: 'female', least: 1400, most: 3200 },
  ] as const)('keeps $who between $least and $most', ({ fromAge, toAge, column, least, most }) => {
    const band = ENERGY_TABLE.filter((row) => row.fromAge >= fromAge && row.fromAge <= toAge).flatMap(
      (row) => row[column],
    );
    expect(Math.min(...band)).toBeGreaterThanOrEqual(least);
    expect(Math.max(...band)).toBeLessThanOrEqual(most);
  });

  test('has one row for every age from 2, each with its source', () => {
    let nextAge = 2;
    for (const { fromAge, toAge, source } of ENERGY_TABLE) {
      expect(fromAge).toBe(nextAge);
      expect(source).toContain('table A2-2');
      nextAge = toAge + 1;
    }
    expect(nextAge).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('a child under two', () => {
  // Table A2-1 of the same appendix: from memory, agreeing with the transcription.
  test.for([
    { birthOn: '2025-07-01', months: 12, male: 800, female: 800 },
    { birthOn: '2025-04-01', months: 15, male: 900, female: 800 },
    { birthOn: '2025-01-01', months: 18, male: 1000, female: 900 },
    { birthOn: '2024-10-01', months: 21, male: 1000, female: 1000 },
    { birthOn: '2024-07-02', months: 23, male: 1000, female: 1000 },
  ])('of $months months is shown at the table figure, marked as from memory', ({ birthOn, male, female }) => {
    for (const [sex, expected] of [
      ['male', male],
      ['female', female],
    ] as const) {
      const answer = dailyKilocalories(anEater(0, { birthOn, sex }), TODAY);
      expect(answer.kilocalories).toEqual(fraction(expected));
      expect(answer.basis).toBe('unknown-under-2');
      expect(answer.note).toContain('from memory');
    }
  });

  test('in its first year counts as 0 until a figure is typed in, and the note says so', () => {
    const infant = anEater(0, { birthOn: '2025-07-02' });
    expect(dailyKilocalories(infant, TODAY)).toMatchObject({
      kilocalories: fraction(0),
      basis: 'unknown-under-2',
    });
    expect(dailyKilocalories(infant, TODAY).note).toContain('counted as 0');
    const typed = dailyKilocalories({ ...infant, typedKilocalories: 650 }, TODAY);
    expect(typed).toMatchObject({ kilocalories: fraction(650), basis: 'typed' });
  });

  test('not yet born needs nothing, whatever was typed', () => {
    const unborn = anEater(0, { birthOn: '2026-09-01', typedKilocalories: 650 });
    expect(dailyKilocalories(unborn, TODAY).kilocalories).toEqual(fraction(0));
  });
});

test('an eater whose sex is not stated is taken at the mean of both columns', () => {
  // 14 years, active: (2800 + 2400) / 2.
  const answer = dailyKilocalories(anEater(14, { sex: 'unstated', activity: 'active' }), TODAY);
  expect(answer.kilocalories).toEqual(fraction(2600));
  expect(answer.note).toContain('mean');
});
