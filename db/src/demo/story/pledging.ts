import { lineOf, money, pledgeTerms, type StoryBuy } from '../buy.ts';
import type { Cast } from '../cast.ts';
import {
  INCE_PLEDGES,
  LATE_PLEDGES,
  LENTILS,
  PLEDGES,
  RAISED_PLEDGES,
  type StoryPledge,
  WHEAT,
} from '../grain.ts';
import type { Caller } from '../teller.ts';

type Pledged = { id: string; buyLineId: string; version: number };
type Tip = { extraUnits: number; extraCostMinorUnits: number; savedMinorUnits: number };
type Fill = { lines: { lineId: string; tips: { tip: Tip | null; wantedUnits: number | null } | null }[] };

/** Households pledge, one by a helper; one pledge is withdrawn, two are raised for the price break. */
export async function gatherPledges(cast: Cast, buy: StoryBuy): Promise<void> {
  const { teller, of } = cast;
  for (const [position, pledge] of PLEDGES.entries()) {
    teller.goTo(position < 20 ? '2026-09-18' : '2026-09-27');
    await makePledge(of(pledge.household).caller, buy, pledge);
  }
  await pledgeForIda(cast, buy);
  teller.goTo('2026-10-12');
  await lookAtFill(cast, buy);
  for (const pledge of LATE_PLEDGES) await makePledge(of(pledge.household).caller, buy, pledge);
  for (const pledge of RAISED_PLEDGES) await raise(of(pledge.household).caller, buy, pledge);
  teller.say('Lena pledges, Beth and Cora raise theirs.');
  teller.goTo('2026-10-14');
  const kit = of('Kemble').caller;
  const { id, version } = await find(kit, buy, LENTILS);
  await kit.post(`${buy.path}/pledges/${id}/withdrawal`, { version });
  teller.say('Kit withdraws the lentils: Kay has found a sack of her own.');
}

export function makePledge(caller: Caller, buy: StoryBuy, pledge: StoryPledge): Promise<Pledged> {
  const body = { buyLineId: lineOf(buy, pledge.food), ...pledgeTerms(buy, pledge) };
  return caller.post<Pledged>(`${buy.path}/pledges`, body);
}

/** A helper's right lasts some days only, and what is done under it says so. */
async function pledgeForIda({ teller, of }: Cast, buy: StoryBuy): Promise<void> {
  const [ida, hugh] = [of('Ince'), of('Hollis')];
  teller.goTo('2026-10-05');
  await ida.caller.post(`/households/${ida.householdId}/helpers`, {
    personId: hugh.personId,
    days: 14,
    reason: 'wrist in plaster',
  });
  for (const pledge of INCE_PLEDGES) await makePledge(hugh.caller.helping(ida.householdId), buy, pledge);
  teller.say('Hugh enters three pledges for Ida, as she asked; they stand in her record as entered for her.');
}

/** What the next bags would be worth to everyone. */
async function lookAtFill({ teller, coordinator }: Cast, buy: StoryBuy): Promise<void> {
  const fill = await coordinator.get<Fill>(`${buy.path}/fill`);
  const wheat = fill.lines.find((line) => line.lineId === lineOf(buy, WHEAT))?.tips;
  if (!wheat?.tip) return;
  const { extraUnits, extraCostMinorUnits, savedMinorUnits } = wheat.tip;
  teller.say(
    `${wheat.wantedUnits} lb of wheat are wanted; ${extraUnits} lb more reach the break: ` +
      `${money(extraCostMinorUnits)} more in all, and ${money(savedMinorUnits)} saved by those already in.`,
  );
}

async function find(caller: Caller, buy: StoryBuy, food: StoryPledge['food']): Promise<Pledged> {
  const { own } = await caller.get<{ own: Pledged[] }>(`${buy.path}/pledges`);
  const pledge = own.find((candidate) => candidate.buyLineId === lineOf(buy, food));
  if (!pledge) throw new Error(`the story finds no pledge for ${food}`);
  return pledge;
}

async function raise(caller: Caller, buy: StoryBuy, pledge: StoryPledge): Promise<void> {
  const { id, version } = await find(caller, buy, pledge.food);
  await caller.put(`${buy.path}/pledges/${id}`, { version, ...pledgeTerms(buy, pledge) });
}
