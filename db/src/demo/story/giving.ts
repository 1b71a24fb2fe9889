import { type Cast, idIn, type Neighbour } from '../cast.ts';

type Can = { readonly id: string; readonly code: string; readonly grams: number };
type Shelf = { containers: (Can & { food: { code: string } })[] };
type Offers = { toMe: { id: string; standing: string; containers: (Can & { state: string })[] }[] };
type Queue = { containers: (Can & { isDue: boolean })[] };
type Matching = { id: string; givenGrams: number };
type Manifest = {
  id: string;
  version: number;
  onDay: string;
  lines: { containerId: string; code: string }[];
};

const RICE = 'rice-white-long';
const TRIP_ON = '2026-11-20'; // a Friday

/** Both take gifts on Tuesdays and Fridays; what they take differs. */
const CARD = {
  ...{ acceptsMakerSealed: true, acceptsHomePacked: false, acceptsLicensedKitchen: null },
  ...{ acceptsReducedOxygen: null, mostDaysPastBest: null, pastBestClasses: null, leastLifeDays: 60 },
  ...{ containerKindCodes: null, labelFacts: ['product', 'net-mass', 'pack-date'], foodCodesWanted: null },
  ...{ foodCodesNotWanted: ['honey'], allergensNotTaken: [], wantsAllergensApart: null, takesCold: false },
  ...{ givesReceipt: true, mostGramsPerVisit: 90_000, mostGramsPerWeek: null, note: '' },
  openings: [2, 5].map((weekday) => ({ weekday, opensAt: '09:00', closesAt: '12:30' })),
  ...{ confirmedOn: '2026-11-05', confirmedBy: 'the intake desk' },
};
const PANTRIES = [
  {
    ...{ name: 'Mill Lane pantry', address: '4 Mill Lane, side door', distanceMetres: 4_800 },
    card: {
      ...{ acceptsHomePacked: true, acceptsReducedOxygen: true, leastLifeDays: 0 },
      ...{ mostDaysPastBest: 1_095, pastBestClasses: ['white-rice', 'dry-legume'] },
    },
  },
  {
    ...{ name: 'Harbour Street food shelf', address: '19 Harbour Street', distanceMetres: 2_100 },
    card: { givesReceipt: null }, // nothing that was packed at home
  },
] as const;

/** Two pantries tell what they take; a household offers its oldest rice, and a neighbour whose turn it is takes some. */
export async function offerOldRice(cast: Cast): Promise<void> {
  const { teller, coordinator, neighbours, of } = cast;
  teller.goTo('2026-11-12');
  for (const { card, ...facts } of PANTRIES)
    await coordinator.post('/pantries', {
      ...facts,
      ...{ timeZone: 'America/Chicago', contactDuty: 'intake desk', contact: '' },
      card: { ...CARD, ...card },
    });
  const giver = of('Eskdale');
  const cans = (await riceOf(giver)).slice(0, 8);
  await giver.caller.post('/offers', {
    ...{ of: 'household', containerIds: cans.map(({ id }) => id), price: { kind: 'gift' } },
    ...{ closesAt: '2026-11-18T18:00:00Z', goesToPantry: true, note: 'Our oldest rice. Cook it soon.' },
  });
  const taker = await firstInTurn(neighbours);
  const taken = taker.cans.slice(0, 2);
  await taker.who.caller.post(`/offers/${taker.offerId}/claims`, {
    containerIds: taken.map(({ id }) => id),
    minorUnits: 0,
  });
  teller.say(
    `${giver.name} offers ${cans.length} cans of its oldest rice; a neighbour takes ${taken.length}.`,
  );
}

const riceOf = async ({ caller }: Neighbour): Promise<Can[]> =>
  (await caller.get<Shelf>('/containers?limit=100')).containers.filter(
    ({ food, grams }) => food.code === RICE && grams > 0,
  );

async function firstInTurn(neighbours: readonly Neighbour[]) {
  for (const who of neighbours) {
    const { toMe } = await who.caller.get<Offers>('/offers');
    const offer = toMe.find(({ standing }) => standing === 'your-turn');
    if (offer)
      return { who, offerId: offer.id, cans: offer.containers.filter(({ state }) => state === 'offered') };
  }
  throw new Error('nobody is asked first for the rice');
}

/** What no member took is matched with the pantries, driven there, and all but a dented can stays. */
export async function giveOldRice(cast: Cast): Promise<void> {
  const { teller, coordinator, of } = cast;
  teller.goTo('2026-11-19');
  const kitchen = of('Eskdale');
  const can = (await riceOf(kitchen)).at(-1);
  await kitchen.caller.post(`/containers/${can?.id}/kitchen`, {});
  const { pantries } = await coordinator.get<{ pantries: { id: string; name: string }[] }>('/pantries');
  const ids = new Map(pantries.map(({ id, name }) => [name, id]));
  const { containers } = await coordinator.get<Queue>('/giving-queue');
  const due = containers.filter(({ isDue }) => isDue);
  const trips = PANTRIES.map(({ name }) => ({
    pantryId: idIn(ids, name),
    ...{ onDay: TRIP_ON, capacityGrams: 60_000 },
  }));
  const matching = await coordinator.post<Matching>('/gift-matchings', { trips });
  const manifest = await coordinator.post<Manifest>('/gift-manifests', {
    ...{ matchingId: matching.id, trip: 0, driver: of('Ashdown').personName },
  });
  teller.goTo(TRIP_ON);
  const dented = manifest.lines.at(-1);
  await coordinator.post(`/gift-manifests/${manifest.id}/receipt`, {
    ...{ version: manifest.version, receivedOn: TRIP_ON, receiverDuty: 'intake desk' },
    refused: [{ containerId: dented?.containerId, reason: 'a dent on the seam' }],
  });
  teller.say(
    `Of ${due.length} containers that wait to be given ${manifest.lines.length} go to ${PANTRIES[0].name}; ` +
      'one comes back with a dent.',
  );
}
