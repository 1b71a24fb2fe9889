import { assert, assertWhole, fraction, sumOf } from '@sheafbook/units';
import type { FillAnswer, FilledLine } from './fill-answer.ts';
import { isWithinCeiling } from './fill-ceilings.ts';
import type { FillLine, FillPledge, FillRequest } from './fill-request.ts';
import { assertFreightTerms, freightMinorUnits } from './freight.ts';
import { assertPriceList, goodsMinorUnits } from './price.ts';
import { assertUnitPrice } from './unit-price.ts';

/** Stops a request that makes no sense, naming what is wrong. */
export function assertFillRequest(request: FillRequest): void {
  assertFreightTerms(request.freight);
  assertWhole(request.minimumGoodsMinorUnits, 'minimumGoodsMinorUnits');
  assertWhole(request.minimumGrams, 'minimumGrams');
  assertDistinct(
    request.lines.map((line) => line.lineId),
    'lines',
  );
  for (const line of request.lines) assertLine(line);
}

function assertLine(line: FillLine): void {
  assert(line.offers.length > 0, 'a line needs at least one bag offer');
  assertWhole(line.commonCap, 'commonCap');
  assertWhole(line.leastBags, 'leastBags');
  if (line.mostBags !== null) assertWhole(line.mostBags, 'mostBags');
  assertDistinct(
    line.offers.map((offer) => offer.bagOfferId),
    'bag offers of a line',
  );
  assertDistinct(
    line.pledges.map((pledge) => pledge.pledgeId),
    'pledges of a line',
  );
  for (const offer of line.offers) assertPriceList(offer);
  for (const pledge of line.pledges) assertPledge(pledge);
}

function assertPledge({ least, wanted, most, step, ceiling }: FillPledge): void {
  for (const [name, amount] of Object.entries({ least, wanted, most, step })) {
    assertWhole(amount, name);
    assert(step > 0 && amount % step === 0, `${name} must be a multiple of the pledge's step`);
  }
  assert(wanted > 0, 'a pledge must want something');
  assert(least <= wanted, 'a pledge cannot want less than its least');
  assert(wanted <= most, 'a pledge cannot want more than its most');
  if (ceiling) assertUnitPrice(ceiling);
}

function assertDistinct(names: readonly string[], what: string): void {
  assert(new Set(names).size === names.length, `the ${what} must have different ids`);
}

/** Re-checks an answer against its request from the ground up, in exact integers, before anyone sees it. */
export function assertFillAnswer(request: FillRequest, answer: FillAnswer): void {
  assert(answer.lines.length === request.lines.length, 'a fill answers every line');
  const goods = sumOf(answer.lines.map((line) => line.goodsMinorUnits));
  assert(answer.goodsMinorUnits === goods, 'goods add up over the lines');
  const freight = freightMinorUnits(request.freight, goods, answer.grams);
  assert(answer.freightMinorUnits === freight, 'freight is what the terms say');
  const reachesMinimum = goods >= request.minimumGoodsMinorUnits && answer.grams >= request.minimumGrams;
  assert(answer.grams === 0 || reachesMinimum, 'an order reaches the minimum of its supplier');
  const grams = request.lines.map((line, position) => checkFilledLine(line, answer.lines[position]));
  assert(answer.grams === sumOf(grams), 'grams add up over the lines');
}

function checkFilledLine(line: FillLine, filled: FilledLine | undefined): number {
  assert(filled?.lineId === line.lineId, 'lines are answered in their order');
  const bags = line.offers.map((_, position) => filled.bags[position]?.bags ?? 0);
  const sumOverOffers = (amount: (index: number) => number) => sumOf(bags.map((_, index) => amount(index)));
  const units = sumOverOffers((index) => (bags[index] ?? 0) * (line.offers[index]?.bagSize ?? 0));
  const grams = sumOverOffers((index) => (bags[index] ?? 0) * (line.offers[index]?.bagGrams ?? 0));
  checkBags(line, filled, bags);
  const allotted = sumOf(filled.allotments.map((allotment) => allotment.units));
  assert(allotted + filled.commonUnits === units, 'allotments and common stock fill the bags exactly');
  assert(
    filled.commonUnits >= 0 && filled.commonUnits <= line.commonCap,
    'common stock stays within its cap',
  );
  const allottedGrams = sumOf(filled.allotments.map((allotment) => allotment.grams));
  assert(allottedGrams + filled.commonGrams === grams, 'every gram of the bags is somebody’s');
  for (const [position, pledge] of line.pledges.entries()) checkAllotment(pledge, filled, position);
  return grams;
}

function checkBags(line: FillLine, filled: FilledLine, bags: readonly number[]): void {
  const bagsInAll = sumOf(bags);
  const most = line.mostBags ?? bagsInAll;
  assert(bagsInAll === 0 || (line.leastBags <= bagsInAll && bagsInAll <= most), 'bags stay within limits');
  let goods = 0;
  for (const [position, offer] of line.offers.entries()) {
    const count = bags[position] ?? 0;
    goods += goodsMinorUnits(offer, count);
    assert(count <= (offer.mostBags ?? count), 'bags of one size stay within their limit');
    assert(count === 0 || filled.commonUnits < offer.bagSize, 'no bag is bought for the common stock alone');
  }
  assert(goods === filled.goodsMinorUnits, 'goods are what the price lists say');
}

function checkAllotment(pledge: FillPledge, filled: FilledLine, position: number): void {
  const allotment = filled.allotments[position];
  assert(allotment?.pledgeId === pledge.pledgeId, 'pledges are answered in their order');
  const { units, dropped } = allotment;
  assert((units === 0) === (dropped !== null), 'a pledge is dropped exactly when it gets nothing');
  if (units === 0) return;
  assert(pledge.least <= units && units <= pledge.most, 'an allotment stays between least and most');
  assert(units % pledge.step === 0, 'an allotment is made of whole steps');
  const price = filled.landedPrice;
  assert(price && isWithinCeiling(pledge, fraction(price.minorUnits, price.grams)), 'no ceiling is broken');
}
