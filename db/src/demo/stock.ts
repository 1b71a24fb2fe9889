import type { HouseholdName } from './people.ts';

/** Food that a household had before the buy, in containers of one kind filled alike. */
export type OldStock = {
  household: HouseholdName;
  foodCode: string;
  kindCode: string;
  count: number;
  gramsEach: number;
  packedOn: string;
  originNote: string;
  harvestYear?: number;
  /** What was done as it was packed; null where nobody remembers. */
  treatment: 'oxygen-absorber' | 'none' | null;
};

const CAN = 'can-no-10';
const PAIL = 'pail-6-gallon-lined';
const JAR = 'jar-half-gallon';

/** Cans and lined pails were closed over an absorber, jars with the air in them. */
const treatmentOf = (kindCode: string) => (kindCode === JAR ? 'none' : 'oxygen-absorber');

const stock = (
  household: HouseholdName,
  [foodCode, kindCode, count, gramsEach]: readonly [string, string, number, number],
  [packedOn, originNote]: readonly [string, string],
): OldStock => ({
  ...{ household, foodCode, kindCode, count, gramsEach, packedOn, originNote },
  treatment: treatmentOf(kindCode),
});

/** Larders differ: some are deep, some are nearly bare, and Gwen's has no wheat in it. */
export const OLD_STOCK: readonly OldStock[] = [
  stock('Ashdown', ['rice-white-long', PAIL, 2, 16_500], ['2024-10-19', 'the buy of autumn 2024']),
  stock('Ashdown', ['beans-pinto', CAN, 12, 2_350], ['2023-11-04', 'canned at the hall in 2023']),
  stock('Birchall', ['wheat-hard-white', PAIL, 2, 17_000], ['2025-09-27', 'the buy of autumn 2025']),
  stock('Birchall', ['beans-navy', CAN, 6, 2_400], ['2025-09-27', 'the buy of autumn 2025']),
  stock('Corran', ['oats-rolled', CAN, 6, 1_000], ['2026-02-14', 'a shop’s clearance']),
  stock('Dell', ['peas-split-green', JAR, 3, 1_500], ['2026-05-02', 'a neighbour who moved away']),
  stock('Eskdale', ['wheat-hard-red-winter', PAIL, 4, 17_500], ['2022-10-08', 'the buy of autumn 2022']),
  {
    ...stock('Eskdale', ['rice-white-long', CAN, 24, 2_350], ['2023-11-04', 'canned at the hall in 2023']),
    treatment: null,
  },
  stock('Eskdale', ['beans-black', CAN, 24, 2_450], ['2023-11-04', 'canned at the hall in 2023']),
  stock('Eskdale', ['chickpeas', CAN, 6, 2_300], ['2024-03-23', 'canned at the hall in 2024']),
  stock('Fenner', ['beans-kidney', JAR, 6, 1_450], ['2026-03-15', 'their own garden']),
  stock('Fenner', ['milk-dry-nonfat', CAN, 4, 1_500], ['2025-04-12', 'canned at the hall in 2025']),
  stock('Garrow', ['rice-white-long', PAIL, 1, 16_500], ['2025-09-27', 'the buy of autumn 2025']),
  stock('Garrow', ['corn-yellow', PAIL, 1, 16_000], ['2025-09-27', 'the buy of autumn 2025']),
  stock('Hollis', ['lentils', JAR, 6, 1_500], ['2025-12-06', 'the winter market']),
  stock('Ince', ['beans-white', JAR, 2, 1_500], ['2025-12-06', 'a gift of their daughter']),
  stock('Ince', ['peas-split-green', CAN, 2, 2_350], ['2024-03-23', 'canned at the hall in 2024']),
  stock('Jessop', ['millet', CAN, 6, 2_400], ['2025-04-12', 'canned at the hall in 2025']),
  stock('Kemble', ['honey', JAR, 2, 2_500], ['2026-08-01', 'their own hives']),
  stock('Lorne', ['rice-white-long', CAN, 3, 2_350], ['2023-11-04', 'canned at the hall in 2023']),
  stock('Marrick', ['peas-split-green', CAN, 5, 2_350], ['2024-03-23', 'canned at the hall in 2024']),
  stock('Nettle', ['wheat-hard-red-winter', CAN, 6, 2_450], ['2024-10-19', 'the buy of autumn 2024']),
  stock('Nettle', ['salt', JAR, 1, 2_000], ['2024-10-19', 'a sack divided among friends']),
];
