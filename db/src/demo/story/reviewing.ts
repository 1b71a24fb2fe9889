import { money, type StoryBuy } from '../buy.ts';
import { type Cast, idIn } from '../cast.ts';
import { OATS, WHEAT } from '../grain.ts';

type TrialBalance = { agrees: boolean; rows: unknown[] };
type Splits = { splits: { id: string }[] };
type Savings = { savedMinorUnits: number | null };
type Looks = { privateReads: { readerName: string; what: string; purpose: string }[] };

/** Beth reads the books and runs every split again; Ida sees who looked at what is hers. */
export async function review({ teller, reviewer, of }: Cast, buy: StoryBuy): Promise<void> {
  teller.goTo('2026-11-21');
  const { agrees, rows } = await reviewer.get<TrialBalance>('/trial-balance');
  const { splits } = await reviewer.get<Splits>(`${buy.path}/splits`);
  let same = 0;
  for (const { id } of splits)
    same += (await reviewer.get<{ isSame: boolean }>(`/splits/${id}/re-run`)).isSame ? 1 : 0;
  teller.say(
    `Beth reads ${rows.length} accounts, which ${agrees ? 'agree' : 'DO NOT AGREE'}, and runs ` +
      `${splits.length} splits again: ${same} come out the same.`,
  );
  const ida = of('Ince');
  const { privateReads } = await ida.caller.get<Looks>(
    `/households/${ida.householdId}/private-reads?limit=100`,
  );
  teller.say(`Ida finds ${privateReads.length} looks at what is hers, each with its name and its purpose.`);
}

/** Cora notes what wheat and oats cost in a shop, and Ned says how long he still means to keep the money. */
export async function lookAhead({ teller, coordinator, of, foodIds }: Cast): Promise<void> {
  teller.goTo('2026-11-21');
  for (const { code, ...seen } of SHELF_PRICES)
    await coordinator.post('/shelf-prices', { ...seen, foodId: idIn(foodIds, code), seenOn: '2026-11-02' });
  const { savedMinorUnits } = await coordinator.get<Savings>('/savings');
  const ned = of('Nettle');
  await coordinator.put(`/persons/${ned.personId}/duties/treasurer/planned-end`, { endsOn: '2027-01-15' });
  teller.say(
    `Cora notes two prices from a shop: of wheat and oats the group saved about ${money(savedMinorUnits ?? 0)}. ` +
      'Ned will keep the money until 15 January.',
  );
}

const FIVE_POUNDS_MILLIGRAMS = 2_267_962;
const FORTY_TWO_OUNCES_MILLIGRAMS = 1_190_680;

const SHELF_PRICES = [
  { code: WHEAT, minorUnits: 749, milligrams: FIVE_POUNDS_MILLIGRAMS, seenWhere: 'a shop in town' },
  { code: OATS, minorUnits: 499, milligrams: FORTY_TWO_OUNCES_MILLIGRAMS, seenWhere: 'a shop in town' },
] as const;
