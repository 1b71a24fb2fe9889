import { BEANS, OATS, RICE, type StoryPledge, type StoryQuote, WHEAT } from './grain.ts';
import type { HouseholdName } from './people.ts';

/** The foods of the buy that comes next. */
export const NEXT_FOODS = [WHEAT, OATS, BEANS, RICE] as const;

/** Invented prices again, in cents a bag. Thornford's offer lapses close upon the day of the order. */
export const NEXT_QUOTES: readonly StoryQuote[] = [
  {
    supplier: 'Marl Hill Mill',
    terms: {
      reference: 'MH 2304',
      validUntil: '2027-01-29',
      freightSteps: [{ fromGrams: 0, minorUnits: 9_500 }],
      freightFreeFromMinorUnits: 60_000,
      leadDays: 6,
      cropYear: 2026,
      moistureNote: 'certificate: 10.1 %',
    },
    offers: [
      {
        food: WHEAT,
        bagPounds: 50,
        breaks: [
          [1, 2_760],
          [10, 2_610],
          [20, 2_450],
        ],
      },
      { food: OATS, bagPounds: 50, breaks: [[1, 4_200]] },
    ],
    chosenFor: [WHEAT],
  },
  {
    supplier: 'Thornford Seed & Pulse',
    terms: {
      reference: 'offer of 17 November',
      validUntil: '2027-01-14',
      minimumGoodsMinorUnits: 20_000,
      freightSteps: [
        { fromGrams: 0, minorUnits: 4_800 },
        { fromGrams: 150_000, minorUnits: 6_600 },
        { fromGrams: 300_000, minorUnits: 8_400 },
      ],
      freightFreeFromMinorUnits: 90_000,
      leadDays: 7,
      cropYear: 2026,
    },
    offers: [
      { food: WHEAT, bagPounds: 25, breaks: [[1, 1_560]] },
      { food: OATS, bagPounds: 50, breaks: [[1, 3_820]] },
      {
        food: BEANS,
        bagPounds: 25,
        breaks: [
          [1, 2_180],
          [6, 2_040],
        ],
      },
      {
        food: RICE,
        bagPounds: 50,
        breaks: [
          [1, 3_450],
          [5, 3_300],
        ],
      },
    ],
    chosenFor: [OATS, BEANS, RICE],
  },
];

const pledge = (
  household: HouseholdName,
  food: StoryPledge['food'],
  [least, wanted, most]: readonly [number, number, number],
  more: Partial<StoryPledge> = {},
): StoryPledge => ({ household, food, least, wanted, most, ...more });

/** Eight of the fourteen have pledged by the evening on which the story ends. */
export const NEXT_PLEDGES: readonly StoryPledge[] = [
  pledge('Ashdown', WHEAT, [50, 100, 150]),
  pledge('Ashdown', BEANS, [20, 25, 30]),
  pledge('Ashdown', RICE, [30, 50, 50]),
  pledge('Corran', WHEAT, [40, 60, 80]),
  pledge('Corran', OATS, [20, 25, 40]),
  pledge('Corran', BEANS, [15, 20, 25]),
  pledge('Dell', WHEAT, [20, 25, 30], { ceiling: 75, asTyped: 'half a bag' }),
  pledge('Dell', BEANS, [5, 10, 15]),
  pledge('Eskdale', WHEAT, [50, 100, 150]),
  pledge('Eskdale', OATS, [10, 20, 25], { ceiling: 95, substitute: RICE }),
  pledge('Eskdale', BEANS, [15, 25, 30]),
  pledge('Fenner', WHEAT, [40, 50, 75]),
  pledge('Fenner', OATS, [20, 25, 30]),
  pledge('Garrow', BEANS, [10, 20, 20]),
  pledge('Garrow', RICE, [30, 40, 60]),
  pledge('Jessop', WHEAT, [50, 75, 100]),
  pledge('Jessop', BEANS, [15, 20, 30]),
  pledge('Jessop', RICE, [20, 30, 40]),
  pledge('Marrick', WHEAT, [20, 30, 40]),
  pledge('Marrick', OATS, [10, 15, 20]),
  pledge('Marrick', RICE, [15, 20, 30]),
];
