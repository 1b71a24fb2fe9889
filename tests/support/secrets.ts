import type { Caller, TestApp } from './app.ts';
import { aPledge, bodyOf } from './buy.ts';
import { aFixedBuy } from './fixed-buy.ts';
import { aHousehold, type TestHousehold } from './household.ts';
import type { TestStorehouse } from './storehouse.ts';
import { aWorld, type TestWorld } from './world.ts';

/** One of each viewer of the job map's section 14, none of them of the household that has the secrets. */
export type Viewer =
  | 'coordinator'
  | 'treasurer'
  | 'packing lead'
  | 'equipment keeper'
  | 'member'
  | 'reviewer';

export type SecretWorld = TestWorld & {
  viewers: Record<Viewer, { caller: Caller; personId: string }>;
  /** The neighbour whose secrets these are. */
  dell: TestHousehold;
  fixed: { buyId: string; path: string };
};

/** Each private datum as it would look in an answer: a figure or a word that nothing else in the book is. */
export const SECRETS = {
  ceiling: '98765412',
  eaterName: 'Zyxophant',
  eaterBirth: '1937-03-02',
  eaterEnergy: '9871',
  planTarget: '3187',
  guideline: '1987653',
  phone: '555-0198765',
  address: 'Zzyzx Road 9',
  householdMail: 'zmail@dell.example',
  balance: '98765431',
  deposit: '8765433',
  waiver: 'Zwaiver after a fire',
  pledgeTyped: 'Zwanted thirty-seven sacks',
  containerWish: '54321',
  stockOrigin: 'Zquirrel cellar',
  stockGrams: '7391',
  lookPurpose: 'Zebra purpose',
  helperReason: 'Zhelper reason',
} as const;
export type Secret = keyof typeof SECRETS;

const CEILING = { ceilingMinorUnits: 98_765_412, ceilingPerGrams: 1000 };

/** A world in which Dell has every kind of secret, and one viewer of each duty is in another household. */
export async function aSecretWorld(app: TestApp, storehouse: TestStorehouse): Promise<SecretWorld> {
  const world = await aWorld(app, storehouse);
  const { Ashdown, Birchall, Corran, Dell } = world.buy.households;
  const lead = await aHousehold(app, storehouse, 'Pell', { duties: ['packing_lead'] });
  const keeper = await aHousehold(app, storehouse, 'Kerr', { duties: ['equipment_keeper'] });
  const reviewer = await aHousehold(app, storehouse, 'Rudd', { duties: ['reviewer'] });
  const viewers = {
    coordinator: Ashdown,
    treasurer: Birchall,
    'packing lead': lead,
    'equipment keeper': keeper,
    member: Corran,
    reviewer,
  };
  await keepSecrets(world, Dell);
  const fixed = await aFixedBuy(app, storehouse, { households: world.buy.households });
  await owe(world, { fixed: fixed.path, householdId: Dell.householdId });
  return { ...world, viewers, dell: Dell, fixed };
}

/** What Dell writes down about itself. */
async function keepSecrets(world: TestWorld, { caller, householdId }: TestHousehold): Promise<void> {
  const { storehouse, gathering, shelves, ids } = world;
  const home = `${storehouse.path}/households/${householdId}`;
  const line = gathering.lines['rice-white-long'];
  const [eater, contact, stock] = [
    { name: SECRETS.eaterName, birthOn: SECRETS.eaterBirth, typedKilocalories: 9871 },
    {
      phone: SECRETS.phone,
      address: SECRETS.address,
      email: SECRETS.householdMail,
      shownToMembers: false,
      version: 0,
    },
    {
      foodId: ids.rice,
      originNote: SECRETS.stockOrigin,
      containerKindId: shelves.kinds['pail-5-gallon-lined'],
    },
  ];
  bodyOf(await caller.post(`${home}/eaters`, eater), 201);
  bodyOf(await caller.put(`${home}/contact`, contact));
  const plan = {
    version: 0,
    needBasis: 'energy',
    targetDays: 3187,
    targetGroups: ['grains'],
    addYear: false,
  };
  const guidelines = [{ foodGroup: 'grains', gramsPerAdultYear: 1_987_653 }];
  bodyOf(await caller.put(`${home}/plan`, { ...plan, guidelines }));
  const filled = { count: 1, gramsEach: 7391, packedOn: '2026-08-01' };
  bodyOf(await caller.post(`${storehouse.path}/stock`, { ...stock, ...filled }), 201);
  const pledge = await aPledge(caller, gathering, { foodCode: 'rice-white-long', wanted: 85 });
  const { id, version, ...known } = pledge;
  const { leastGrams, wantedGrams, mostGrams, wholeBags } = known;
  const edit = {
    version,
    leastGrams,
    wantedGrams,
    mostGrams,
    wholeBags,
    ...CEILING,
    asTyped: SECRETS.pledgeTyped,
  };
  bodyOf(await caller.put(`${gathering.path}/pledges/${id}`, edit));
  const wishes = [{ containerKindId: shelves.kinds['can-no-10'], grams: 54_321 }];
  bodyOf(await caller.put(`${gathering.path}/lines/${line}/container-wishes`, { wishes }));
  const look = `${home}/contact?purpose=${encodeURIComponent(SECRETS.lookPurpose)}`;
  bodyOf(await storehouse.coordinator.get(look));
  const { personId } = world.buy.households.Birchall;
  bodyOf(await caller.post(`${home}/helpers`, { personId, days: 3, reason: SECRETS.helperReason }), 201);
}

/** What the treasurer writes down about Dell: a deposit, a waiver, and a balance that comes to the marked figure. */
async function owe(world: TestWorld, { fixed, householdId }: { fixed: string; householdId: string }) {
  const { path } = world.storehouse;
  const { treasurer } = world.buy;
  const reason = SECRETS.waiver;
  bodyOf(await treasurer.post(`${fixed}/deposits/waivers`, { householdId, reason }), 201);
  const paid = { householdId, minorUnits: 8_765_433, till: 'bank' };
  bodyOf(await treasurer.post(`${fixed}/deposits`, paid), 201);
  const { balanceMinorUnits } = bodyOf(await treasurer.get(`${path}/households/${householdId}/balance`));
  const opening = { of: 'household', householdId, reason: 'the older book' };
  const missing = { balanceMinorUnits: 98_765_431 - balanceMinorUnits };
  bodyOf(await treasurer.post(`${path}/opening-balances`, { ...opening, ...missing }), 201);
}
