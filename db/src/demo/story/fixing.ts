import { money, type StoryBuy } from '../buy.ts';
import type { Cast } from '../cast.ts';

type Fixing = {
  totalMinorUnits: number;
  baskets: { certificate: { method: string; isProvenBest: boolean } }[];
  lines: { lineId: string; bags: { bags: number }[]; commonGrams: number }[];
  dropped: { householdId: string; reason: string; substituteLineId: string | null }[];
};
type Deposit = { householdId: string; household: string; askedMinorUnits: number | null };

/** The buy is fixed on its best fill, deposits come in, and two people order. */
export async function fixAndOrder(cast: Cast, buy: StoryBuy): Promise<void> {
  const { teller, coordinator, treasurer } = cast;
  teller.goTo('2026-10-17');
  const fixed = await coordinator.post<Fixing>(`${buy.path}/fixing`, {});
  const bags = fixed.lines.map((line) => line.bags.reduce((sum, size) => sum + size.bags, 0));
  const isProven = fixed.baskets.every(({ certificate }) => certificate.isProvenBest);
  const moved = fixed.dropped.filter((pledge) => pledge.substituteLineId !== null);
  teller.say(
    `Fixed: ${bags.join(' + ')} bags for ${money(fixed.totalMinorUnits)}, ` +
      `${isProven ? 'proven best' : 'best found'}; ${moved.length} pledge goes to its substitute, ` +
      `${fixed.dropped.length - moved.length} is priced out.`,
  );
  await takeDeposits(cast, buy);
  teller.goTo('2026-10-21');
  await coordinator.post(`${buy.path}/order-consents`, { duty: 'coordinator' });
  const note = 'Please send a lorry with a tail-lift.';
  const { orderNos } = await treasurer.post<{ orderNos: number[] }>(`${buy.path}/order-consents`, { note });
  teller.say(`Cora and Ned agree, and ${orderNos.length} orders go out.`);
}

/** By bank, in cash, out of a credit; Dora is let off hers. */
async function takeDeposits({ teller, treasurer, of }: Cast, buy: StoryBuy): Promise<void> {
  teller.goTo('2026-10-18');
  const dell = of('Dell').householdId;
  await treasurer.post(`${buy.path}/deposits/waivers`, {
    householdId: dell,
    reason: 'her pension comes late',
  });
  const { deposits } = await treasurer.get<{ deposits: Deposit[] }>(`${buy.path}/deposits`);
  for (const { householdId, household, askedMinorUnits } of deposits) {
    if (householdId === dell || !askedMinorUnits) continue;
    teller.goTo(IN_CASH.has(household) ? '2026-10-20' : '2026-10-19');
    for (const part of partsOf(household, askedMinorUnits))
      await treasurer.post(`${buy.path}/deposits`, { householdId, ...part });
  }
  teller.goTo('2026-10-20');
  await treasurer.post('/cash-bankings', { minorUnits: 5_000, note: 'from the tin' });
  teller.say('Deposits are in: most by bank, two in cash, one partly out of a credit, one waived.');
}

const IN_CASH: ReadonlySet<string> = new Set(['Hollis', 'Ince']);
/** Kit's credit from the old notebook. */
const CREDIT_MINOR_UNITS = 2_500;

function partsOf(household: string, askedMinorUnits: number) {
  if (household === 'Kemble') {
    const minorUnits = Math.min(CREDIT_MINOR_UNITS, askedMinorUnits);
    const rest = { minorUnits: askedMinorUnits - minorUnits, till: 'bank' };
    return [{ minorUnits, fromBalance: true }, ...(rest.minorUnits > 0 ? [rest] : [])];
  }
  return [{ minorUnits: askedMinorUnits, till: IN_CASH.has(household) ? 'cash' : 'bank' }];
}
