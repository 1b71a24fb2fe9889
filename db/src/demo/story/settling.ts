import { lineOf, money, type StoryBuy, supplierOf } from '../buy.ts';
import type { Cast } from '../cast.ts';
import { CARRIER, WHEAT } from '../grain.ts';
import type { HouseholdName } from '../people.ts';

type Invoice = { id: string; supplierId: string; minorUnits: number };
type Balances = { balances: { householdId: string; household: string; balanceMinorUnits: number }[] };
type Charges = { lines: { id: string; buyLineId: string | null; costLine: string; minorUnits: number }[] };

/** Bills are paid, households pay, the buy closes at 0.00; then the mill sends a little back. */
export async function settle(cast: Cast, buy: StoryBuy): Promise<void> {
  const { teller, treasurer } = cast;
  await paySuppliers(cast, buy);
  await takePayments(cast);
  await mendDebts(cast);
  teller.goTo('2026-11-16');
  const closing = await treasurer.post<{ stage: string; clearingMinorUnits: number }>(`${buy.path}/closing`);
  teller.say(`Autumn grain is ${closing.stage}, its clearing at ${money(closing.clearingMinorUnits)}.`);
  await treasurer.post('/year-ends', { throughOn: '2026-10-31' });
  await treasurer.post('/periods', { throughOn: '2026-10-31' });
  teller.say('Ned closes the books through October.');
  teller.goTo('2026-11-18');
  await giveBack(cast, buy);
}

/** Each bill less what was credited on it. */
async function paySuppliers({ teller, treasurer }: Cast, buy: StoryBuy): Promise<void> {
  teller.goTo('2026-11-12');
  const { invoices } = await treasurer.get<{ invoices: Invoice[] }>(`${buy.path}/invoices`);
  const { claims } = await treasurer.get<{ claims: { supplierId: string; creditedMinorUnits: number }[] }>(
    `${buy.path}/claims`,
  );
  let paid = 0;
  for (const { id, supplierId, minorUnits } of invoices) {
    const credited = claims
      .filter((claim) => claim.supplierId === supplierId)
      .reduce((sum, claim) => sum + claim.creditedMinorUnits, 0);
    const isCarrier = supplierId === supplierOf(buy, CARRIER);
    const payment = { supplierId, minorUnits: minorUnits - credited, till: isCarrier ? 'cash' : 'bank' };
    await treasurer.post('/supplier-payments', { ...payment, invoiceId: id });
    paid += payment.minorUnits;
  }
  await treasurer.post('/bank-charges', { minorUnits: 150, note: 'two transfers' });
  teller.say(`Ned pays the suppliers and the carrier ${money(paid)} in all.`);
}

/** Who still owes on the day that the story ends, and what they paid towards it. */
const LATE: Partial<Record<HouseholdName, number>> = { Dell: 0, Garrow: 2_500, Hollis: 0, Lorne: 0 };
const IN_CASH: ReadonlySet<string> = new Set(['Ince', 'Marrick']);

async function takePayments({ teller, treasurer }: Cast): Promise<void> {
  teller.goTo('2026-11-14');
  const { balances } = await treasurer.get<Balances>('/balances?owing=true&limit=100');
  const paid = { inFull: 0, inPart: 0 };
  for (const { householdId, household, balanceMinorUnits } of balances) {
    const minorUnits = LATE[household as HouseholdName] ?? balanceMinorUnits;
    if (minorUnits === 0) continue;
    const till = IN_CASH.has(household) ? 'cash' : 'bank';
    await treasurer.post('/payments', { householdId, minorUnits, till });
    paid[minorUnits === balanceMinorUnits ? 'inFull' : 'inPart'] += 1;
  }
  teller.say(
    `Of ${balances.length} households that owe, ${paid.inFull} pay in full and ${paid.inPart} in part.`,
  );
}

/** A trifle from the old notebook is written off, and the store fund takes part of what Dora owes. */
async function mendDebts({ teller, treasurer, of }: Cast): Promise<void> {
  teller.goTo('2026-11-15');
  const lorne = { householdId: of('Lorne').householdId, minorUnits: 320 };
  await treasurer.post('/write-offs', { ...lorne, reason: 'nobody remembers what it was for' });
  const dell = { householdId: of('Dell').householdId, minorUnits: 1_000 };
  await treasurer.post('/hardship-covers', { ...dell, reason: 'agreed at the meeting of 12 November' });
  const seals = { purpose: 'New seals for the line', minorUnits: 1_500 };
  await treasurer.post('/fund-promises', seals);
  teller.say(
    '3.20 of an old debt are written off; the store fund bears 10.00 for Dora, and 15.00 of it are promised for seals.',
  );
}

/** A goodwill credit after the close goes to those who bore the wheat, by the very weights that they bore it by. */
async function giveBack({ teller, treasurer }: Cast, buy: StoryBuy): Promise<void> {
  const { lines } = await treasurer.get<Charges>(`${buy.path}/charges`);
  const wheat = lines.find((line) => line.buyLineId === lineOf(buy, WHEAT) && line.minorUnits > 0);
  await treasurer.post(`${buy.path}/late-credits`, {
    chargeLineId: wheat?.id,
    minorUnits: 400,
    till: 'bank',
    reason: 'the mill’s goodwill for a damp bag',
  });
  teller.say('The mill sends 4.00 in goodwill; it goes back to those who bore the wheat.');
}
