import { type Cast, idIn } from '../cast.ts';
import { BEANS, type BuyFood, RICE, WHEAT } from '../grain.ts';
import type { HouseholdName } from '../people.ts';
import { buySupplies, shareCosts } from './day-costs.ts';
import { bringSeamer, findBadSeam } from './seams.ts';

type OwnBags = { bags: { bagId: string; grams: number; food: { id: string } }[] };
type Wish = {
  household: HouseholdName;
  food: BuyFood;
  containers: number;
  gramsEach: number;
  startsAt: string;
  /** What really went into each can, when the scoop was not steady. */
  poured?: readonly number[];
};

const AUTUMN: readonly Wish[] = [
  { household: 'Dell', food: BEANS, containers: 1, gramsEach: 2_400, startsAt: '2026-11-19T18:30:00Z' },
  { household: 'Marrick', food: RICE, containers: 2, gramsEach: 2_400, startsAt: '2026-11-19T18:36:00Z' },
  {
    ...{
      household: 'Jessop',
      food: WHEAT,
      containers: 6,
      gramsEach: 2_500,
      startsAt: '2026-11-19T18:43:00Z',
    },
    poured: [2_510, 2_495, 2_540, 2_555, 2_502, 2_500],
  },
  { household: 'Fenner', food: WHEAT, containers: 5, gramsEach: 2_500, startsAt: '2026-11-19T18:46:00Z' },
];
const WINTER: readonly Wish[] = [
  { household: 'Hollis', food: WHEAT, containers: 4, gramsEach: 2_500, startsAt: '2026-12-12T18:30:00Z' },
  { household: 'Fenner', food: RICE, containers: 2, gramsEach: 2_400, startsAt: '2026-12-12T18:55:00Z' },
];

/** A canning evening in the hall: booked, poured, signed and settled; and the next one, which is open still. */
export async function packAtTheHall(cast: Cast): Promise<void> {
  const { teller, packingLead } = cast;
  await buySupplies(cast);
  const autumn = await openDay(
    cast,
    'Autumn canning',
    ['2026-11-19T18:00:00Z', '2026-11-19T21:00:00Z'],
    AUTUMN,
  );
  for (const name of ['Ashdown', 'Birchall', 'Corran', 'Dell', 'Hollis', 'Fenner', 'Marrick'] as const)
    await cast.of(name).caller.put(`${autumn}/hand`, { isComing: true, maySeam: name === 'Corran' });
  teller.goTo('2026-11-19');
  await packingLead.post(`${autumn}/start`);
  const pack = await packingLead.post<{ id: string }>(`${autumn}/absorber-packs`, {
    ...{ sizeMillilitres: 300, packets: 25 },
  });
  let count = 0;
  const tearDown = await bringSeamer(cast, autumn);
  await tearDown({ occasion: 'first' });
  for (const wish of AUTUMN) {
    count += await pourAtTheLine(cast, autumn, wish);
    if (wish.household === 'Marrick') await tearDown({ serial: count });
    if (wish.household === 'Jessop') await findBadSeam(cast, tearDown);
  }
  await tearDown({ serial: count, occasion: 'last' });
  await packingLead.post(`${autumn}/absorber-packs/${pack.id}/shutting`, { packetsLeft: 25 - count });
  await packingLead.post(`${autumn}/signing`);
  teller.say(`${count} cans are closed at the hall, and Joan signs for every gram.`);
  await shareCosts(cast, autumn);
  const winter = await openDay(
    cast,
    'Winter canning',
    ['2026-12-12T18:00:00Z', '2026-12-12T22:00:00Z'],
    WINTER,
  );
  // Seven have said yes: two know the seamer, and one may not lift.
  for (const name of ['Ashdown', 'Dell', 'Eskdale', 'Ince', 'Kemble', 'Lorne', 'Marrick'] as const)
    await cast.of(name).caller.put(`${winter}/hand`, {
      ...{ isComing: true, maySeam: name === 'Dell' || name === 'Kemble', mayLift: name !== 'Ince' },
    });
  await bookScale(cast, winter);
}

/** The lead books the scale for the day: it is weighed on what its check of November found true. */
async function bookScale({ packingLead }: Cast, path: string): Promise<void> {
  const { items } = await packingLead.get<{ items: { id: string; name: string }[] }>(`${path}/equipment`);
  const scale = items.find(({ name }) => name === 'Floor scale');
  if (!scale) throw new Error('the keeper has put the scale into lending');
  await packingLead.post(`${path}/equipment`, { itemId: scale.id });
}

async function openDay(
  cast: Cast,
  name: string,
  [startsAt, endsAt]: readonly [string, string],
  wishes: readonly Wish[],
): Promise<string> {
  const facts = { name, place: 'the hall', startsAt, endsAt, lineFeeMinorUnits: 15 };
  const { id } = await cast.packingLead.post<{ id: string }>('/packing-sessions', facts);
  const path = `/packing-sessions/${id}`;
  for (const { household, food, containers, gramsEach, startsAt: from } of wishes) {
    const { caller } = cast.of(household);
    const wish = {
      ...{ foodId: idIn(cast.foodIds, food), containerKindId: idIn(cast.kindIds, 'can-no-10') },
      ...{ treatment: 'oxygen-absorber', containers, gramsEach },
    };
    await caller.put(`${path}/wishes`, { wishes: [wish] });
    await caller.post(`${path}/slots`, { startsAt: from });
  }
  return path;
}

/** A household's food comes to the line, goes into its cans, and what is left is weighed back a little light. */
async function pourAtTheLine(cast: Cast, path: string, wish: Wish): Promise<number> {
  const { packingLead, foodIds, kindIds } = cast;
  const { householdId, caller } = cast.of(wish.household);
  const cans = wish.poured ?? Array.from({ length: wish.containers }, () => wish.gramsEach);
  const foodId = idIn(foodIds, wish.food);
  const { bags } = await caller.get<OwnBags>('/own-bags');
  let filled = 0;
  for (const { bagId, grams } of bags.filter(({ food }) => food.id === foodId)) {
    const fits: number[] = [];
    let left = grams;
    for (const can of cans.slice(filled)) {
      if (can > left) break;
      fits.push(can);
      left -= can;
    }
    if (fits.length === 0) continue;
    await packingLead.post(`${path}/bags`, { bagId, householdId });
    await packingLead.post(`${path}/pours`, {
      ...{ line: 1, bagId, householdId, containerKindId: idIn(kindIds, 'can-no-10') },
      ...{ treatment: 'oxygen-absorber', targetGrams: wish.gramsEach, grams: fits },
    });
    const dust = Math.min(left, 8);
    await packingLead.put(`${path}/left`, { bagId, householdId, leftGrams: left - dust });
    filled += fits.length;
  }
  return filled;
}
