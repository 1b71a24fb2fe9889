import type { HouseholdName } from './people.ts';

/** The foods of the buy in their order, by code. */
export const FOODS = [
  'wheat-hard-red-winter',
  'rice-white-long',
  'oats-rolled',
  'beans-black',
  'lentils',
] as const;
export type BuyFood = (typeof FOODS)[number];

export const [WHEAT, RICE, OATS, BEANS, LENTILS] = FOODS;

export type SupplierName = 'Marl Hill Mill' | 'Thornford Seed & Pulse' | 'Pell & Daughter';

/** Brings what Thornford sends, and bills for its tail-lift. */
export const CARRIER = 'Valley Freight';

type Break = readonly [fromBags: number, bagPriceMinorUnits: number];
export type StoryOffer = {
  food: BuyFood;
  bagPounds: number;
  breaks: readonly Break[];
  breakKind?: 'all-units' | 'incremental';
};

export type StoryQuote = {
  supplier: SupplierName;
  terms: Record<string, unknown>;
  offers: readonly StoryOffer[];
  /** The foods that are bought from it in the end. */
  chosenFor: readonly BuyFood[];
};

/** Invented prices, in cents a bag. Freight steps are by weight; above the threshold of goods the lorry is free. */
export const QUOTES: readonly StoryQuote[] = [
  {
    supplier: 'Marl Hill Mill',
    terms: {
      reference: 'MH 2231',
      validUntil: '2026-10-26',
      freightSteps: [{ fromGrams: 0, minorUnits: 9_500 }],
      freightFreeFromMinorUnits: 60_000,
      leadDays: 6,
      cropYear: 2026,
      moistureNote: 'certificate: 9.4 %',
    },
    offers: [
      {
        food: WHEAT,
        bagPounds: 50,
        breaks: [
          [1, 2_700],
          [10, 2_550],
          [20, 2_400],
        ],
      },
      { food: OATS, bagPounds: 50, breaks: [[1, 4_350]] },
    ],
    chosenFor: [WHEAT],
  },
  {
    supplier: 'Thornford Seed & Pulse',
    terms: {
      reference: 'offer of 7 September',
      validUntil: '2026-10-30',
      minimumGoodsMinorUnits: 25_000,
      freightSteps: [
        { fromGrams: 0, minorUnits: 4_800 },
        { fromGrams: 150_000, minorUnits: 6_600 },
        { fromGrams: 300_000, minorUnits: 8_400 },
        { fromGrams: 500_000, minorUnits: 11_000 },
      ],
      freightFreeFromMinorUnits: 90_000,
      leadDays: 7,
      cropYear: 2026,
    },
    offers: [
      { food: WHEAT, bagPounds: 25, breaks: [[1, 1_590]] },
      {
        food: RICE,
        bagPounds: 50,
        breaks: [
          [1, 3_400],
          [5, 3_250],
        ],
      },
      { food: OATS, bagPounds: 50, breaks: [[1, 3_750]] },
      {
        food: BEANS,
        bagPounds: 25,
        breakKind: 'incremental',
        breaks: [
          [1, 2_140],
          [5, 2_040],
        ],
      },
      { food: LENTILS, bagPounds: 25, breaks: [[1, 2_420]] },
    ],
    chosenFor: [RICE, OATS, BEANS, LENTILS],
  },
  {
    supplier: 'Pell & Daughter',
    terms: {
      reference: 'by telephone',
      validUntil: '2026-10-21',
      minimumGoodsMinorUnits: 30_000,
      foreignPriceNote: 'quoted as 42.90 CAD a bag',
    },
    offers: [{ food: WHEAT, bagPounds: 50, breaks: [[1, 3_120]] }],
    chosenFor: [],
  },
];

export type StoryPledge = {
  household: HouseholdName;
  food: BuyFood;
  /** Pounds. */
  least: number;
  wanted: number;
  most: number;
  wholeBags?: boolean;
  /** The highest landed price of a pound, in cents. */
  ceiling?: number;
  substitute?: BuyFood;
  asTyped?: string;
};

const pledge = (
  household: HouseholdName,
  food: BuyFood,
  [least, wanted, most]: readonly [number, number, number],
  more: Partial<StoryPledge> = {},
): StoryPledge => ({ household, food, least, wanted, most, ...more });

/** Pounds at least, wanted and at most, in the order that they come in. Ida's are entered for her: see INCE_PLEDGES. */
export const PLEDGES: readonly StoryPledge[] = [
  pledge('Ashdown', WHEAT, [100, 150, 150], { wholeBags: true, asTyped: '3 bags' }),
  pledge('Ashdown', RICE, [50, 50, 100], { wholeBags: true, asTyped: '1 bag' }),
  pledge('Ashdown', OATS, [15, 25, 30]),
  pledge('Ashdown', BEANS, [20, 25, 30]),
  pledge('Ashdown', LENTILS, [15, 15, 15]),
  pledge('Birchall', WHEAT, [100, 100, 150]),
  pledge('Birchall', RICE, [20, 25, 30]),
  pledge('Birchall', OATS, [15, 20, 20]),
  pledge('Birchall', BEANS, [10, 15, 20]),
  pledge('Corran', WHEAT, [50, 60, 75]),
  pledge('Corran', OATS, [15, 20, 25]),
  pledge('Corran', BEANS, [10, 10, 15]),
  pledge('Corran', LENTILS, [10, 10, 10]),
  pledge('Dell', WHEAT, [20, 30, 30], { ceiling: 70 }),
  pledge('Dell', BEANS, [5, 10, 10], { ceiling: 120 }),
  pledge('Eskdale', WHEAT, [50, 100, 150]),
  pledge('Eskdale', RICE, [25, 50, 50]),
  pledge('Eskdale', OATS, [20, 25, 25]),
  pledge('Eskdale', BEANS, [25, 25, 50]),
  pledge('Fenner', WHEAT, [60, 75, 85]),
  pledge('Fenner', RICE, [20, 25, 25]),
  pledge('Fenner', OATS, [20, 25, 25]),
  pledge('Garrow', RICE, [50, 60, 75], { asTyped: 'rice for us both, no wheat' }),
  pledge('Garrow', BEANS, [15, 20, 25]),
  pledge('Garrow', LENTILS, [15, 15, 15]),
  pledge('Hollis', WHEAT, [60, 90, 100]),
  pledge('Hollis', RICE, [20, 25, 25]),
  pledge('Hollis', OATS, [10, 15, 20]),
  pledge('Jessop', WHEAT, [50, 100, 150]),
  pledge('Jessop', RICE, [30, 40, 45]),
  pledge('Jessop', BEANS, [15, 20, 25]),
  pledge('Jessop', LENTILS, [10, 10, 10]),
  pledge('Kemble', WHEAT, [40, 40, 45]),
  pledge('Kemble', RICE, [10, 10, 15]),
  pledge('Kemble', BEANS, [10, 10, 15]),
  pledge('Kemble', LENTILS, [10, 10, 15]),
  pledge('Marrick', WHEAT, [40, 60, 65]),
  pledge('Marrick', RICE, [15, 20, 20]),
  pledge('Marrick', OATS, [10, 15, 20]),
  pledge('Marrick', LENTILS, [5, 5, 5], { ceiling: 60, asTyped: '5 lb if they are cheap' }),
  pledge('Nettle', WHEAT, [30, 40, 40]),
  pledge('Nettle', OATS, [5, 10, 10]),
  pledge('Nettle', BEANS, [10, 10, 10]),
  pledge('Nettle', LENTILS, [10, 10, 10]),
];

/** Ida's wrist is in plaster: Hugh enters these for her. */
export const INCE_PLEDGES: readonly StoryPledge[] = [
  pledge('Ince', WHEAT, [30, 35, 40]),
  pledge('Ince', RICE, [5, 10, 10]),
  pledge('Ince', LENTILS, [5, 5, 5]),
];

/** What comes in after everyone heard how little the next price break lacks. Lena takes rice if oats land too dear. */
export const LATE_PLEDGES: readonly StoryPledge[] = [
  pledge('Lorne', WHEAT, [30, 45, 45]),
  pledge('Lorne', OATS, [15, 20, 20], {
    ceiling: 82,
    substitute: RICE,
    asTyped: 'oats, or rice if they are dear',
  }),
  pledge('Lorne', BEANS, [10, 15, 15]),
];

/** Pledges that grow on the same evening. */
export const RAISED_PLEDGES: readonly StoryPledge[] = [
  pledge('Birchall', WHEAT, [100, 150, 150]),
  pledge('Corran', WHEAT, [50, 70, 75]),
];
