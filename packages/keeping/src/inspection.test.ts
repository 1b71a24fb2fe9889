import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  FINDINGS,
  type Finding,
  INSPECTION_RULES,
  judgeInspection,
  letsGoTo,
  OUTCOMES,
} from './inspection.ts';
import { inspectByOn, inspectionsDue, type LookedAt } from './inspection-due.ts';
import { lookGroupsOf } from './inspection-groups.ts';
import { FINDING_WORDS, OUTCOME_WORDS } from './inspection-words.ts';

/** Job map 10.5; what it does not name is common practice. */
const BEST: Readonly<Record<Finding, string>> = {
  'nothing-wrong': 'table',
  'bulge-hiss-spurt': 'discard',
  'surface-rust': 'table',
  'pitting-or-seam-rust': 'discard',
  'dented-body': 'table',
  'dented-seam': 'discard',
  leak: 'discard',
  'loose-seal': 'kitchen-soon',
  'torn-liner': 'kitchen-soon',
  'absorber-hard': 'table',
  'rancid-smell': 'animals',
  'sour-or-musty-smell': 'discard',
  'chemical-smell': 'discard',
  'live-insects': 'freeze-and-repack',
  webbing: 'animals',
  'insect-damaged-kernels': 'animals',
  'stones-or-chaff': 'table',
  'glass-or-metal': 'discard',
  'wet-or-caked': 'discard',
  mould: 'discard',
  'rodent-marks': 'discard',
  'dark-colour': 'table',
  'dyed-seed': 'discard',
  'stale-taste': 'animals',
};

test.for(FINDINGS.map((finding) => [finding, BEST[finding]] as const))(
  '%s: %s at best',
  ([finding, best]) => {
    const judgement = judgeInspection([finding]);
    expect(judgement).toMatchObject({ best, deciding: [finding] });
    expect(judgement.allowed[0]).toBe(best);
  },
);

test('each finding and each outcome has its words in both languages, and what hurts has its warning', () => {
  const said = [...Object.values(FINDING_WORDS), ...Object.values(OUTCOME_WORDS)].flatMap(Object.values);
  const empty = said.filter((words) => words !== null && (words.en === '' || words.es === ''));
  expect(empty).toEqual([]);
  const dangerous = FINDINGS.filter((finding) => INSPECTION_RULES[finding].caution !== null);
  expect(dangerous.filter((finding) => FINDING_WORDS[finding].mind === null)).toEqual([]);
  expect(FINDING_WORDS['bulge-hiss-spurt'].mind?.en).toMatch(/^Do not open it/);
  expect(FINDING_WORDS.mould.mind?.en).toMatch(/^Do not smell it/);
});

const someFindings = fc.subarray([...FINDINGS], { minLength: 1 });

test('a further finding never allows what was not allowed without it', () => {
  fc.assert(
    fc.property(someFindings, fc.constantFrom(...FINDINGS), (findings, more) => {
      const before = judgeInspection(findings);
      const after = judgeInspection([...findings, more]);
      expect(OUTCOMES.indexOf(after.best)).toBeGreaterThanOrEqual(OUTCOMES.indexOf(before.best));
      expect(after.allowed.filter((outcome) => !before.allowed.includes(outcome))).toEqual([]);
      expect(after.holds || !before.holds).toBe(true);
    }),
  );
});

test('a worse finding in place of another never gives a better outcome', () => {
  fc.assert(
    fc.property(
      someFindings,
      fc.constantFrom(...FINDINGS),
      fc.constantFrom(...FINDINGS),
      (rest, one, other) => {
        const rankOf = (finding: Finding) => OUTCOMES.indexOf(judgeInspection([finding]).best);
        const [milder, worse] = rankOf(one) <= rankOf(other) ? [one, other] : [other, one];
        const own = rest.filter((finding) => finding !== 'loose-seal'); // alone it has a pair that is worse together
        if (milder === 'loose-seal') return;
        const judge = (finding: Finding) => OUTCOMES.indexOf(judgeInspection([...own, finding]).best);
        expect(judge(worse)).toBeGreaterThanOrEqual(judge(milder));
      },
    ),
  );
});

test('a loose seal is for the kitchen soon only while the odour is good', () => {
  expect(judgeInspection(['loose-seal', 'surface-rust']).best).toBe('kitchen-soon');
  expect(judgeInspection(['loose-seal', 'rancid-smell'])).toMatchObject({
    best: 'discard',
    deciding: ['loose-seal', 'rancid-smell'],
  });
});

test('a look asks after each finding once, what shows only inside of an open container alone; kernels are counted', () => {
  const asked = (how: 'outside' | 'opened') => lookGroupsOf(how).flatMap(({ findings }) => findings);
  const ticked = FINDINGS.filter((code) => code !== 'nothing-wrong' && code !== 'insect-damaged-kernels');
  expect(asked('opened').toSorted()).toEqual(ticked.toSorted());
  expect(asked('outside').toSorted()).toEqual(
    ticked.filter((code) => INSPECTION_RULES[code].shows === 'outside').toSorted(),
  );
});

test('what is thrown away goes to nobody, what is for animals to no people', () => {
  const ways = ['eaten', 'given', 'animals', 'composted', 'sampled', 'spilled', 'discarded'];
  const lets = (outcome: (typeof OUTCOMES)[number]) => ways.filter((way) => letsGoTo(outcome, way));
  expect(lets('discard')).toEqual(['spilled', 'discarded']);
  expect(lets('animals')).toEqual(['animals', 'composted', 'sampled', 'spilled', 'discarded']);
  expect(lets('table')).toEqual(ways);
});

describe('what is to be looked at', () => {
  const can: LookedAt = {
    ...{ code: 'A', lotId: 'wheat', barrier: 'metal', packedOn: '2025-09-01', openedOn: null, lastOn: null },
  };
  const due = (rows: readonly LookedAt[], byOn: string) =>
    inspectionsDue(rows, byOn).map(({ row, why, dueOn }) => `${row.code} ${why} ${dueOn}`);

  test('what is open after 30 days, also a can; a pouch or a jar after 180', () => {
    const open = { ...can, openedOn: '2026-01-01' };
    expect(due([open], '2026-01-30')).toEqual([]);
    expect(due([open], '2026-01-31')).toEqual(['A open 2026-01-31']);
    const jar: LookedAt = { ...can, barrier: 'glass', packedOn: '2026-01-01' };
    expect(due([jar], '2026-06-29')).toEqual([]);
    expect(due([jar], '2026-06-30')).toEqual(['A pouch-or-jar 2026-06-30']);
    expect(due([{ ...jar, lastOn: '2026-06-30' }], '2026-12-26')).toEqual([]);
  });

  // Job map 2.14: ⌈√10⌉ = 4 of ten shut cans a year.
  test('four of ten shut cans of a lot within a year, and none of a lot that is younger', () => {
    const ten = Array.from({ length: 10 }, (_, at) => ({ ...can, code: `C${at}` }));
    expect(due(ten, '2026-08-31')).toEqual([]);
    expect(due(ten, '2026-09-01')).toHaveLength(4);
    const oneSeen = ten.map((row, at) => (at === 0 ? { ...row, lastOn: '2026-08-01' } : row));
    expect(due(oneSeen, '2026-09-01')).toEqual(['C1', 'C2', 'C3'].map((code) => `${code} sample 2026-09-01`));
    const seenLongAgo = ten.map((row, at) => (at === 0 ? { ...row, lastOn: '2025-09-02' } : row));
    expect(due(seenLongAgo, '2026-09-02').map((line) => line.slice(0, 2))).toEqual(['C1', 'C2', 'C3', 'C4']);
  });
});

test.for([
  ['metal', '2026-09-01', '2026-09-01', '2027-09-01'],
  ['metal', '2026-09-01', '2027-08-31', '2027-09-01'],
  ['metal', '2026-09-01', '2027-09-01', '2028-08-31'],
  ['foil', '2026-09-01', '2026-09-01', '2027-02-28'],
  [null, '2026-09-01', '2027-02-28', '2027-08-27'],
] as const)(
  'a label of what is behind %s, packed %s and printed %s, says %s',
  ([barrier, packedOn, todayOn, on]) => {
    expect(inspectByOn({ barrier, packedOn }, todayOn)).toBe(on);
  },
);
