import { lineOf, pounds, type StoryBuy } from '../buy.ts';
import { type Cast, idIn, type Neighbour } from '../cast.ts';
import { BEANS, type BuyFood, LENTILS, OATS, RICE, WHEAT } from '../grain.ts';
import type { HouseholdName } from '../people.ts';
import { OLD_STOCK } from '../stock.ts';
import type { Caller } from '../teller.ts';

type Kinds = { containerKinds: { id: string; kindCode: string; version: number }[] };
type Plan = { plan: { containers: Planned[] } | null };
type Splits = {
  splits: {
    lineId: string;
    undoneAt: string | null;
    shares: { ownerId: string; pieces: { bagId: string; grams: number }[] }[];
  }[];
};
type Piece = { bagId: string; lotId: string; grams: number };
type Shelf = { containers: { id: string; grams: number; food: { code: string } }[] };

/** Prices of a container in cents, and what it weighs empty with its lid, as Joan weighed ten of each. */
const KIND_FACTS: Readonly<Record<string, { priceMinorUnits: number; tareGrams: number }>> = {
  'can-no-10': { priceMinorUnits: 133, tareGrams: 322 },
  'pail-6-gallon-lined': { priceMinorUnits: 745, tareGrams: 1_180 },
  'jar-half-gallon': { priceMinorUnits: 260, tareGrams: 884 },
};

/** What stood in the larders before goes into the book first. */
export async function bringOldStock({ teller, packingLead, of, foodIds, kindIds }: Cast): Promise<void> {
  teller.goTo('2026-09-02');
  const { containerKinds } = await packingLead.get<Kinds>('/container-kinds?limit=100');
  for (const { id, kindCode, version } of containerKinds) {
    const facts = KIND_FACTS[kindCode];
    if (facts) await packingLead.put(`/container-kinds/${id}`, { version, ...facts });
  }
  for (const { household, foodCode, kindCode, ...stock } of OLD_STOCK)
    await of(household).caller.post('/stock', {
      ...stock,
      foodId: idIn(foodIds, foodCode),
      containerKindId: idIn(kindIds, kindCode),
    });
  const households = new Set(OLD_STOCK.map((stock) => stock.household));
  await namePlaces({ packingLead, of });
  teller.say(`${households.size} households write down what stands in their larders already.`);
}

/** Degrees Celsius of a usual year, January first. */
const CELLAR = [9, 9, 10, 11, 13, 15, 16, 17, 16, 14, 12, 10] as const;
const GARAGE = [2, 4, 9, 14, 20, 27, 31, 30, 25, 16, 9, 4] as const;

const WITH_CELLARS = ['Birchall', 'Corran', 'Dell', 'Garrow', 'Jessop', 'Marrick', 'Nettle'] as const;

const listShelf = async (caller: Caller) =>
  (await caller.get<{ containers: Standing[] }>('/containers?limit=100')).containers;
type Standing = { readonly id: string; readonly packedOn: string };

/** They have stood there since they were packed. */
async function stand(caller: Caller, placeId: string, containers: readonly Standing[]): Promise<void> {
  for (const packedOn of new Set(containers.map((container) => container.packedOn)))
    await caller.post('/container-moves', {
      containerIds: containers
        .filter((container) => container.packedOn === packedOn)
        .map((container) => container.id),
      ...{ placeId, movedOn: packedOn },
    });
}

/** Some say where their food stands and how warm it is there; most have not measured yet. */
async function namePlaces({ packingLead, of }: Pick<Cast, 'packingLead' | 'of'>): Promise<void> {
  const usualYear = (degrees: readonly number[], fromYear: number) =>
    Array.from({ length: 2026 - fromYear + 1 }, (_, at) => fromYear + at)
      .flatMap((year) =>
        degrees.map((celsius, month) => ({
          month: `${year}-${String(month + 1).padStart(2, '0')}`,
          tenthsCelsius: celsius * 10,
        })),
      )
      .filter(({ month }) => month <= '2026-09');
  const name = async (caller: Caller, facts: Record<string, unknown>, months: object[]) => {
    const known = { isLit: false, isDamp: null, isRodentProof: null, ...facts };
    const { id } = await caller.post<{ id: string }>('/places', known);
    if (months.length > 0) await caller.put(`/places/${id}/months`, { months });
    return id;
  };
  const own = { of: 'household' };
  const [hollis, ashdown] = [of('Hollis').caller, of('Ashdown').caller];
  await name(
    packingLead,
    { of: 'store', name: 'Back room of the hall', kind: 'room', isRodentProof: true, mostGrams: 400_000 },
    [],
  );
  const cellar = await name(
    hollis,
    { ...own, name: 'Cellar', kind: 'cellar', isDamp: true },
    usualYear(CELLAR, 2014),
  );
  const garage = await name(
    hollis,
    { ...own, name: 'Garage', kind: 'garage', isRodentProof: false },
    usualYear(GARAGE, 2020),
  );
  const jars = await listShelf(hollis);
  await stand(hollis, cellar, jars.slice(0, 4));
  await stand(hollis, garage, jars.slice(4));
  const pantry = await name(ashdown, { ...own, name: 'Pantry', kind: 'pantry' }, usualYear(CELLAR, 2023));
  await stand(ashdown, pantry, await listShelf(ashdown));
  for (const household of WITH_CELLARS) {
    const { caller } = of(household);
    const id = await name(caller, { ...own, name: 'Cellar', kind: 'cellar' }, usualYear(CELLAR, 2022));
    await stand(caller, id, await listShelf(caller));
  }
}

type Wish = {
  household: HouseholdName;
  food: BuyFood;
  kinds: readonly [kindCode: string, pounds: number | null][];
};

/** Pounds in each kind; null is whatever is left of the share. */
const WISHES: readonly Wish[] = [
  {
    household: 'Ashdown',
    food: WHEAT,
    kinds: [
      ['can-no-10', 60],
      ['pail-6-gallon-lined', null],
    ],
  },
  { household: 'Ashdown', food: BEANS, kinds: [['can-no-10', null]] },
  { household: 'Birchall', food: WHEAT, kinds: [['pail-6-gallon-lined', null]] },
  { household: 'Corran', food: LENTILS, kinds: [['jar-half-gallon', null]] },
  { household: 'Eskdale', food: RICE, kinds: [['can-no-10', null]] },
  { household: 'Garrow', food: RICE, kinds: [['can-no-10', null]] },
  { household: 'Jessop', food: OATS, kinds: [['can-no-10', null]] },
  { household: 'Kemble', food: WHEAT, kinds: [['can-no-10', null]] },
  { household: 'Nettle', food: BEANS, kinds: [['jar-half-gallon', null]] },
];

const wishPath = (buy: StoryBuy, food: BuyFood) => `${buy.path}/lines/${lineOf(buy, food)}/container-wishes`;

/** Households say what they want their shares in, while there is time to get the containers. */
export async function wishContainers({ teller, of, kindIds }: Cast, buy: StoryBuy): Promise<void> {
  for (const { household, food, kinds } of WISHES)
    await of(household).caller.put(wishPath(buy, food), {
      wishes: kinds.map(([kindCode, mass]) => ({
        containerKindId: idIn(kindIds, kindCode),
        grams: mass === null ? null : pounds(mass),
      })),
    });
  teller.say(`${WISHES.length} shares are wished in cans, pails and jars.`);
}

/** Pours what was planned: whole containers out of each piece of a bag, one across two bags of a lot, never a mix. */
export async function pourShares({ teller, of }: Cast, buy: StoryBuy): Promise<void> {
  teller.goTo('2026-11-11');
  let count = 0;
  for (const { household, food } of WISHES) {
    const neighbour = of(household);
    const { plan } = await neighbour.caller.get<Plan>(wishPath(buy, food));
    let pieces = await listPieces(neighbour, buy, food);
    for (const planned of plan?.containers ?? []) {
      const poured = await pourKind(neighbour.caller, pieces, planned);
      pieces = poured.pieces;
      count += poured.count;
    }
  }
  teller.say(`${count} containers are poured and labelled; odd pounds stay in their bags.`);
}

/** What a household has of a food, bag by bag, with the lot of each. */
export async function listPieces(
  { householdId, caller }: Neighbour,
  buy: StoryBuy,
  food: BuyFood,
): Promise<Piece[]> {
  const { splits } = await caller.get<Splits>(`${buy.path}/splits`);
  const shares = splits
    .filter((split) => split.lineId === lineOf(buy, food) && split.undoneAt === null)
    .flatMap((split) => split.shares.filter((share) => share.ownerId === householdId));
  const pieces: Piece[] = [];
  for (const { bagId, grams } of shares.flatMap((share) => share.pieces)) {
    const { lotId } = await caller.get<{ lotId: string }>(`/bags/${bagId}`);
    pieces.push({ bagId, lotId, grams });
  }
  return pieces;
}

type Planned = { kindId: string; count: number; gramsEach: number };

/** Pours containers of one kind, as far as the pieces reach; gives what is left of them. */
async function pourKind(caller: Caller, pieces: readonly Piece[], planned: Planned) {
  const { kindId: containerKindId, gramsEach } = planned;
  const left: Piece[] = [];
  let count = 0;
  let open: { containerId: string; lotId: string; lacks: number } | undefined;
  for (const [position, { bagId, lotId, grams }] of pieces.entries()) {
    let rest = grams;
    if (open?.lotId === lotId) {
      const more = Math.min(rest, open.lacks);
      await caller.post(`/containers/${open.containerId}/pours`, { bagId, grams: more });
      rest -= more;
      open = more < open.lacks ? { ...open, lacks: open.lacks - more } : undefined;
    }
    const whole = Math.min(Math.floor(rest / gramsEach), planned.count - count);
    if (whole > 0) await caller.post('/containers', { bagId, containerKindId, count: whole, gramsEach });
    count += whole;
    rest -= whole * gramsEach;
    const isNextAlike = pieces[position + 1]?.lotId === lotId;
    if (!open && rest > 0 && count < planned.count && isNextAlike) {
      const part = { bagId, containerKindId, count: 1, gramsEach: rest };
      const { containers } = await caller.post<{ containers: { id: string }[] }>('/containers', part);
      open = { containerId: containers[0]?.id ?? '', lotId, lacks: gramsEach - rest };
      count += 1;
      rest = 0;
    }
    left.push({ bagId, lotId, grams: rest });
  }
  return { count, pieces: left };
}

/** Some of it is eaten, out of a can, a pail and an open bag. */
export async function eat({ teller, of }: Cast, buy: StoryBuy): Promise<void> {
  teller.goTo('2026-11-20');
  const uses = [
    { household: 'Ashdown', foodCode: RICE, grams: 2_700, note: 'three suppers' },
    { household: 'Nettle', foodCode: WHEAT, grams: 1_200, note: 'bread' },
    { household: 'Eskdale', foodCode: BEANS, grams: 900, note: 'chilli' },
  ] as const;
  for (const { household, foodCode, ...use } of uses) {
    const { caller } = of(household);
    const { containers } = await caller.get<Shelf>('/containers?limit=100');
    const container = containers.find(({ food, grams }) => food.code === foodCode && grams >= use.grams);
    if (!container) throw new Error(`${household} has no container of ${foodCode} to eat from`);
    await caller.post(`/containers/${container.id}/uses`, { ...use, to: 'eaten' });
  }
  const hollis = of('Hollis');
  const [piece] = await listPieces(hollis, buy, OATS);
  await hollis.caller.post(`/bags/${piece?.bagId}/uses`, { grams: 800, to: 'eaten', note: 'porridge' });
  teller.say('Some is eaten already: rice, bread, chilli, porridge.');
}
