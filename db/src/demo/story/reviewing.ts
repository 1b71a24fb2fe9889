import type { StoryBuy } from '../buy.ts';
import type { Cast } from '../cast.ts';

type TrialBalance = { agrees: boolean; rows: unknown[] };
type Splits = { splits: { id: string }[] };
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
