import type { Duty } from '@sheafbook/api';
import type { Cast, Neighbour } from '../cast.ts';
import { DEMO_PASSWORD, emailOf, HOUSEHOLDS, type HouseholdName, type StoryHousehold } from '../people.ts';
import type { Caller, Teller } from '../teller.ts';

export const STOREHOUSE_NAME = 'Alder Row Storehouse';

const POUNDS_25_GRAMS = 11_340;

/** Ada founds the storehouse, asks the others in, and hands the coordinator's duty on. */
export async function foundStorehouse(teller: Teller): Promise<Cast> {
  teller.goTo('2026-09-01');
  const { founder, storehouseId } = await setUp(teller);
  const neighbours = [founder];
  for (const household of HOUSEHOLDS.slice(1))
    neighbours.push(await invite(teller, { founder, storehouseId, household }));
  teller.say(`${neighbours.length} households have joined, each by a link of its own.`);
  const cast = await gather(teller, storehouseId, neighbours);
  await giveDuties(cast);
  await decideRules(cast);
  for (const household of HOUSEHOLDS) await enterHousehold(cast.of(household.name), household);
  teller.say(
    `${HOUSEHOLDS.flatMap((household) => household.eaters).length} eaters are entered, each by their own.`,
  );
  await openBook(cast);
  return cast;
}

async function setUp(teller: Teller): Promise<{ founder: Neighbour; storehouseId: string }> {
  const [ada] = HOUSEHOLDS;
  if (!ada) throw new Error('the story has a first household');
  const { body, cookie } = await teller.enter<{ storehouseId: string }>('/api/set-up', {
    email: emailOf(ada),
    password: DEMO_PASSWORD,
    personName: ada.personName,
    householdName: ada.name,
    storehouse: { name: STOREHOUSE_NAME, currency: 'USD', timeZone: 'America/Chicago' },
  });
  const { storehouseId } = body;
  const caller = teller.caller(cookie, `/api/storehouses/${storehouseId}`);
  const { persons } = await caller.get<{ persons: { id: string; householdId: string }[] }>('/persons');
  const [person] = persons;
  if (!person) throw new Error('whoever founds a storehouse is in it');
  teller.say(`${ada.personName} founds ${STOREHOUSE_NAME}.`);
  const { name, personName } = ada;
  return {
    storehouseId,
    founder: { name, personName, householdId: person.householdId, personId: person.id, caller },
  };
}

async function invite(
  teller: Teller,
  {
    founder,
    storehouseId,
    household,
  }: { founder: Neighbour; storehouseId: string; household: StoryHousehold },
): Promise<Neighbour> {
  const { name, personName } = household;
  const { token } = await founder.caller.post<{ token: string }>('/invitations', { householdName: name });
  const login = { email: emailOf(household), password: DEMO_PASSWORD };
  const { body, cookie } = await teller.enter<{ householdId: string; personId: string }>(
    `/api/invitations/${storehouseId}/${token}`,
    { personName, login },
  );
  const caller = teller.caller(cookie, `/api/storehouses/${storehouseId}`);
  return { name, personName, householdId: body.householdId, personId: body.personId, caller };
}

async function gather(teller: Teller, storehouseId: string, neighbours: readonly Neighbour[]): Promise<Cast> {
  const of = (name: HouseholdName): Neighbour => {
    const found = neighbours.find((neighbour) => neighbour.name === name);
    if (!found) throw new Error(`${name} is not in the story`);
    return found;
  };
  const withDuty = (duty: Duty): Caller => {
    const household = HOUSEHOLDS.find((candidate) => candidate.duty === duty);
    if (!household) throw new Error(`nobody in the story is ${duty}`);
    return of(household.name).caller;
  };
  const { caller } = of('Ashdown');
  const { foods } = await caller.get<{ foods: { id: string; foodCode: string }[] }>('/foods?limit=200');
  const { containerKinds } = await caller.get<{ containerKinds: { id: string; kindCode: string }[] }>(
    '/container-kinds?limit=100',
  );
  return {
    teller,
    storehouseId,
    neighbours,
    coordinator: withDuty('coordinator'),
    treasurer: withDuty('treasurer'),
    packingLead: withDuty('packing_lead'),
    reviewer: withDuty('reviewer'),
    of,
    foodIds: new Map(foods.map((food) => [food.foodCode, food.id])),
    kindIds: new Map(containerKinds.map((kind) => [kind.kindCode, kind.id])),
  };
}

/** Five duties in five households; the founder keeps none. */
async function giveDuties(cast: Cast): Promise<void> {
  const founder = cast.of('Ashdown');
  for (const { name, duty } of HOUSEHOLDS)
    if (duty) await founder.caller.post(`/persons/${cast.of(name).personId}/duties`, { duty });
  await cast.coordinator.end(`/persons/${founder.personId}/duties/coordinator`);
  cast.teller.say('Cora coordinates, Ned keeps the money, Joan packs, Gwen keeps the tools, Beth reviews.');
}

async function decideRules({ coordinator }: Cast): Promise<void> {
  const { rules } = await coordinator.get<{ rules: { rulesVersion: number; decidedAt: string } }>('');
  const { decidedAt: _, ...inForce } = rules;
  await coordinator.post('/rules', {
    ...inForce,
    depositPercent: 40,
    freightBasis: 'blend',
    blendNumerator: 1,
    blendDenominator: 2,
    commonCapGrams: POUNDS_25_GRAMS,
  });
}

async function enterHousehold(
  { caller, householdId }: Neighbour,
  { eaters, plan, phone }: StoryHousehold,
): Promise<void> {
  const path = `/households/${householdId}`;
  for (const eater of eaters) await caller.post(`${path}/eaters`, eater);
  if (plan)
    await caller.put(`${path}/plan`, {
      ...plan,
      version: 0,
      targetGroups: ['grains', 'legumes'],
      addYear: false,
      guidelines: [],
    });
  if (phone) await caller.put(`${path}/contact`, { version: 0, phone, address: '', shownToMembers: false });
}

/** What the book kept before says: money in the bank, a credit, a small old debt; and a gift to start with. */
async function openBook({ teller, treasurer, of }: Cast): Promise<void> {
  const reason = 'brought over from the notebook of 2025';
  await treasurer.post('/opening-balances', { of: 'bank', balanceMinorUnits: 41_260, reason });
  const kemble = { of: 'household', householdId: of('Kemble').householdId };
  await treasurer.post('/opening-balances', { ...kemble, balanceMinorUnits: -2_500, reason });
  const lorne = { of: 'household', householdId: of('Lorne').householdId };
  await treasurer.post('/opening-balances', { ...lorne, balanceMinorUnits: 320, reason });
  await treasurer.post('/fund-receipts', {
    minorUnits: 5_000,
    till: 'cash',
    note: 'a gift at the street fair',
  });
  teller.say('Ned brings the balances of the old notebook over.');
}
