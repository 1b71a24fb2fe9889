import { type Cast, idIn } from '../cast.ts';
import type { Caller } from '../teller.ts';

type Standing = { readonly id: string; readonly food: { code: string }; readonly grams: number };
type TakenIn = { verdict: string; containers: { id: string }[] };

const WHEAT = 'wheat-hard-red-winter';

/** Wheat that stood in a stranger's house: a year on the lids, and nobody who packed it to be asked. */
const GIFT = {
  ...{ of: 'common', count: 5, gramsEach: 2_450, packedOn: '2011-05-01', mark: 'MAY 11' },
  ...{ treatment: null, moistureTenths: null, donor: 'the heirs of a house on Quarry Road' },
  answers: {
    ...{ packedBy: 'unknown', packedHow: 'home-packed', summers: 'unknown' },
    ...{ harm: 'unknown', pests: 'no', opened: 'no' },
  },
  note: 'Five cans with MAY 11 on their lids, found when the house was cleared.',
} as const;

/** Cans are given to the store whose history nobody knows: one is rusted through, one is opened and its seeds are laid. */
export async function takeInGift(cast: Cast): Promise<void> {
  const { teller, coordinator, packingLead, foodIds, kindIds } = cast;
  teller.goTo('2026-11-20');
  const taken = await coordinator.post<TakenIn>('/intakes', {
    ...GIFT,
    ...{ foodId: idIn(foodIds, WHEAT), containerKindId: idIn(kindIds, 'can-no-10') },
  });
  const [rusted, opened] = taken.containers;
  if (!rusted || !opened) throw new Error('the gift is of five cans');
  await look(packingLead, rusted, {
    ...{ how: 'outside', findings: ['pitting-or-seam-rust'], outcome: 'discard', isMovedOut: true },
    note: 'Pits along the seam, deep enough for a fingernail.',
  });
  await look(packingLead, opened, {
    ...{ how: 'opened', findings: ['stale-taste'], outcome: 'animals', isMovedOut: true },
    note: 'Dry and clean, and it tastes of cardboard.',
  });
  await packingLead.post(`/containers/${taken.containers[2]?.id}/small-tests`, {
    ...{ kind: 'sprout', seeds: { laid: 20, sprouted: 3 }, note: 'on a wet cloth, seven days' },
  });
  teller.say(
    `${taken.containers.length} cans of wheat are given to the store, their history ${taken.verdict.replace('-history', '')}: ` +
      'one is rusted through, one tastes of cardboard.',
  );
}

/** Gwen finds moths in her pail of corn. The rules leave it to the hens, and her other food is to be looked at. */
export async function findMoths({ teller, of }: Cast): Promise<void> {
  teller.goTo('2026-11-20');
  const { caller, name } = of('Garrow');
  const { containers } = await caller.get<{ containers: Standing[] }>('/containers?limit=100');
  const pail = containers.find(({ food, grams }) => food.code === 'corn-yellow' && grams > 0);
  if (!pail) throw new Error('there is no pail of corn to find moths in');
  await look(caller, pail, {
    ...{ how: 'opened', findings: ['live-insects', 'webbing'], outcome: 'animals', isMovedOut: true },
    note: 'Moths under the lid, and webs down to the middle. The hens have it.',
  });
  teller.say(`${name} finds moths in a pail of corn; ${pail.grams} g go to the hens.`);
}

const look = (caller: Caller, { id }: { id: string }, found: Record<string, unknown>) =>
  caller.post(`/containers/${id}/inspections`, found);
