import { money, type StoryBuy } from '../buy.ts';
import type { Cast } from '../cast.ts';
import { BEANS, WHEAT } from '../grain.ts';
import { receive, SMALL_BAG_GRAMS } from './landing.ts';
import { pickUp, splitFood } from './sharing-out.ts';

type Holds = { holds: { id: string; bagNo: number }[] };
type Claim = { id: string; kind: string; buyLineId: string; minorUnits: number };

/** The damp wheat is let go, the missing beans come, and the suppliers answer the claims. */
export async function takeWhatComesLater(cast: Cast, buy: StoryBuy): Promise<void> {
  const { teller, treasurer } = cast;
  await releaseWheat(cast, buy);
  teller.goTo('2026-11-06');
  const bag = { supplierMark: 'T-B4', netGrams: SMALL_BAG_GRAMS };
  await receive(cast, buy, {
    supplier: 'Thornford Seed & Pulse',
    arrivedOn: '2026-11-06',
    foods: [{ food: BEANS, bags: [bag] }],
  });
  teller.say('The missing bag of beans comes after all, as a further part.');
  await splitFood(cast, buy, BEANS, null);
  await settleClaims(cast, buy);
  const { clearingMinorUnits } = await treasurer.post<{ clearingMinorUnits: number }>(
    `${buy.path}/recharging`,
  );
  teller.say(`The charges are brought up to the bills; clearing stands at ${money(clearingMinorUnits)}.`);
  await pickUp(cast, buy, { from: '2026-11-10T23:00:00Z', to: '2026-11-11T01:00:00Z' });
}

/** Two people let a bag go: the packing lead writes down what she found, the coordinator agrees. */
async function releaseWheat(cast: Cast, buy: StoryBuy): Promise<void> {
  const { teller, coordinator, packingLead } = cast;
  teller.goTo('2026-11-03');
  const { holds } = await packingLead.get<Holds>(`/holds?open=true&buyId=${buy.buyId}`);
  for (const { id } of holds) {
    await packingLead.post(`/holds/${id}/release-request`, {
      finding: 'Dried by the stove to 9.8 %, no smell, no clumps. Fit to eat within the year.',
    });
    await coordinator.post(`/holds/${id}/release`);
  }
  teller.say('The damp bag of wheat is dry and sound: Joan asks, Cora agrees, and it is let go.');
  await splitFood(cast, buy, WHEAT, null);
}

/** Marl Hill grants the missing bag and the torn one's loss; Thornford the wet rice, but not the beans that came. */
async function settleClaims({ teller, treasurer }: Cast, buy: StoryBuy): Promise<void> {
  teller.goTo('2026-11-09');
  const { claims } = await treasurer.get<{ claims: Claim[] }>(`${buy.path}/claims`);
  const isOf = (claim: Claim, food: string) => claim.buyLineId === buy.lineIds.get(food);
  for (const claim of claims) {
    if (claim.kind === 'short' && isOf(claim, BEANS)) {
      await treasurer.post(`/claims/${claim.id}/refusal`, { because: 'It came on 6 November.' });
      continue;
    }
    const isWheatDamage = claim.kind === 'damage' && isOf(claim, WHEAT);
    const minorUnits = isWheatDamage ? TORN_MINOR_UNITS : claim.minorUnits;
    await treasurer.post(`/claims/${claim.id}/credit`, { minorUnits, note: 'credit note' });
  }
  teller.say('The suppliers answer: credited are a short bag, a torn one and the wet rice.');
}

/** A tenth of a bag at 24.00. The bag that was on hold turned out sound, so nothing is owed for it. */
const TORN_MINOR_UNITS = 240;
