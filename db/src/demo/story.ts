import type { StoryBuy } from './buy.ts';
import type { Cast } from './cast.ts';
import { takeWhatComesLater } from './story/coming-later.ts';
import { fixAndOrder } from './story/fixing.ts';
import { foundStorehouse } from './story/founding.ts';
import { giveOldRice, offerOldRice } from './story/giving.ts';
import { holdLentils } from './story/holding.ts';
import { bringOldStock, eat, pourShares, wishContainers } from './story/keeping.ts';
import { landBuy } from './story/landing.ts';
import { handSealerOn, lendSealer } from './story/lending.ts';
import { findMoths, takeInGift } from './story/looking.ts';
import { openNextBuy } from './story/next-buy.ts';
import { packAtTheHall } from './story/packing.ts';
import { gatherPledges } from './story/pledging.ts';
import { gatherQuotes } from './story/quoting.ts';
import { lookAhead, review } from './story/reviewing.ts';
import { settle } from './story/settling.ts';
import { shareOut } from './story/sharing-out.ts';
import type { Teller } from './teller.ts';

/** Tells the whole story, act by act, and hands on who was in it. */
export async function tellStory(teller: Teller): Promise<{ cast: Cast; buy: StoryBuy }> {
  const cast = await foundStorehouse(teller);
  await bringOldStock(cast);
  const buy = await gatherQuotes(cast);
  await gatherPledges(cast, buy);
  await wishContainers(cast, buy);
  await fixAndOrder(cast, buy);
  await landBuy(cast, buy);
  await shareOut(cast, buy);
  await takeWhatComesLater(cast, buy);
  await pourShares(cast, buy);
  await offerOldRice(cast);
  await settle(cast, buy);
  const sealer = await lendSealer(cast);
  await holdLentils(cast, buy);
  await packAtTheHall(cast);
  await openNextBuy(cast, buy);
  await giveOldRice(cast);
  await handSealerOn(cast, sealer);
  await eat(cast, buy);
  await takeInGift(cast);
  await findMoths(cast);
  await review(cast, buy);
  await lookAhead(cast);
  return { cast, buy };
}
