import { depositMinorUnits } from '@sheafbook/sharing';
import { currencyExponent } from '@sheafbook/units';
import { Problem } from '../../../platform/problem.ts';
import { presentBuyPage } from '../../buy/present.ts';
import { readBuy } from '../../buy/use-cases.ts';
import { readOwnDeposit } from '../../deposit/use-cases.ts';
import { previewPledge, readFill } from '../../fill/use-cases.ts';
import { readHousehold } from '../../household/use-cases.ts';
import { readKeyings } from '../../keying/use-cases.ts';
import type { BuyPledge } from '../../pledge/queries.ts';
import { maySeePledges, readHouseholdPledges, readPledges } from '../../pledge/use-cases.ts';
import { type Block, type Fact, facts, type Row, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { asAnyMember, type Desk, type MadePaper, nameOf, subject } from './making.ts';

type Page = ReturnType<typeof presentBuyPage>;
type PageLine = Page['lines'][number];
type Household = Awaited<ReturnType<typeof readHousehold>>;
type Wish = { readonly buyId: string; readonly householdId: string | undefined; readonly isBlank: boolean };

/**
 * A pledge slip (paper 2): what a household has pledged, or empty for a pen. Its ceilings are printed for itself alone;
 * a duty that prints a neighbour's slip finds them left out (job map section 14).
 */
export async function makePledgeSlip(desk: Desk, wish: Wish): Promise<MadePaper> {
  const { context, formats } = desk;
  const { actor } = context;
  const member = asAnyMember(context);
  const page = presentBuyPage(await readBuy(member, wish.buyId), member.actor);
  const householdId = wish.householdId ?? (wish.isBlank ? null : actor.householdId);
  const household = householdId === null ? null : await readHousehold(context, householdId);
  const isOwn = householdId !== null && householdId === actor.householdId;
  if (household && !isOwn && !maySeePledges(actor)) throw new Problem('not-your-household');
  const pledges = household && !wish.isBlank ? await readPledgesOf(desk, { page, household, isOwn }) : [];
  const costs = isOwn ? await readCosts(desk, page, pledges) : new Map<string, string>();
  const money = isOwn && pledges.length > 0 ? await readDeposit(desk, page) : [];
  const keyed = pledges.length > 0 ? await readKeyed(desk, { page, pledges }) : [];
  const { words } = formats;
  const content = {
    about: [household ? words.seat(household.seat) : '', page.name].filter((line) => line !== ''),
    blocks: [
      ...(pledges.length === 0 ? [text(words.slip.forPen)] : []),
      text(words.slip.unit(formats.unit === 'lb')),
      slipTable(page, { pledges, isOwn, formats }),
      ...(costs.size > 0 ? [facts(costFacts(page, { costs, formats }))] : []),
      facts([...money, ...entryFacts(pledges, formats), ...keyed]),
      { kind: 'signatures', boxes: boxesOf(household, formats) } as const,
    ],
  };
  return {
    subject: subject('pledge-slip', { buyId: wish.buyId, householdId, detail: wish.isBlank ? 'blank' : '' }),
    contentWith: () => content,
    isLandscape: true,
  };
}

const boxesOf = (household: Household | null, { words }: Formats): string[] => [
  ...(household ? [] : [words.slip.householdBox]),
  words.slip.writtenOn,
  words.slip.person,
  words.signature,
];

async function readPledgesOf(
  { context }: Desk,
  of: { page: Page; household: Household; isOwn: boolean },
): Promise<BuyPledge[]> {
  if (of.isOwn) return [...(await readPledges(context, of.page.id)).own];
  const found: BuyPledge[] = [];
  for (let after: string | undefined, isMore = true; isMore; ) {
    const query = { after, limit: 200, format: 'json' as const };
    const { rows, next } = await readHouseholdPledges(context, of.page.id, query);
    found.push(...rows.filter((pledge) => pledge.householdId === of.household.householdId));
    after = next ?? undefined;
    isMore = next !== null;
  }
  return found;
}

/** While the buy gathers, what each pledge may cost by what the others take: their least or their most. */
async function readCosts(
  { context, formats }: Desk,
  page: Page,
  pledges: readonly BuyPledge[],
): Promise<Map<string, string>> {
  const costs = new Map<string, string>();
  if (page.stage !== 'gathering') return costs;
  for (const { ceiling, ...pledge } of pledges) {
    const price = ceiling ? { ceilingMinorUnits: ceiling.minorUnits, ceilingPerGrams: ceiling.grams } : {};
    const { outcomes } = await previewPledge(context, page.id, { ...wishOf(pledge), ...price });
    const sums = Object.values(outcomes).map(({ landedMinorUnits }) => landedMinorUnits);
    const [low, high] = [Math.min(...sums), Math.max(...sums)];
    const between = formats.words.slip.costBetween(formats.money(low), formats.money(high));
    costs.set(pledge.buyLineId, low === high ? formats.money(low) : between);
  }
  return costs;
}

function wishOf(pledge: Omit<BuyPledge, 'ceiling'>) {
  const { buyLineId, leastGrams, wantedGrams, mostGrams, wholeBags, substituteLineId, asTyped } = pledge;
  return { buyLineId, leastGrams, wantedGrams, mostGrams, wholeBags, substituteLineId, asTyped };
}

/** Before the buy is fixed what the group's rule will ask by today's fill; after that what was asked. */
async function readDeposit({ context, formats }: Desk, page: Page): Promise<Fact[]> {
  const { words } = formats;
  const { ask } = await readOwnDeposit(context, page.id);
  if (ask) return [{ name: words.slip.depositAsked, value: formats.money(ask.askedMinorUnits) }];
  const { estimates, rules } = await readFill(asAnyMember(context), page.id);
  const own = estimates.owners.find(({ ownerId }) => ownerId === context.actor.householdId);
  if (!own) return [];
  const exponent = currencyExponent(formats.currency);
  const expected = depositMinorUnits(own.minorUnits, rules.depositPercent, exponent);
  return [{ name: words.slip.depositExpected, value: formats.money(expected) }];
}

type Slip = { pledges: readonly BuyPledge[]; isOwn: boolean; formats: Formats };

function slipTable(page: Page, slip: Slip): Block {
  const { words } = slip.formats;
  const pen = (name: string, penWidth: number) => ({ name, penWidth });
  return table(
    [
      { name: words.food, isKey: true, penWidth: 80 },
      { ...pen(words.slip.least, 62), isNumber: true },
      { ...pen(words.slip.wanted, 62), isNumber: true },
      { ...pen(words.slip.most, 62), isNumber: true },
      { ...pen(words.slip.ceiling, 80) },
      { ...pen(words.slip.share, 80) },
      { ...pen(words.slip.substitute, 80) },
    ],
    page.lines.map((line) => slipRow(page, line, slip)),
  );
}

function slipRow(page: Page, line: PageLine, { pledges, isOwn, formats }: Slip): Row {
  const { words } = formats;
  const pledge = pledges.find(({ buyLineId }) => buyLineId === line.id);
  const step = stepWords(line);
  const food = nameOf(line.food, formats);
  if (!pledge) return { kind: 'pen', cells: [food, '', '', '', '', words.slip.wholeOrShare(step), ''] };
  const substitute = page.lines.find(({ id }) => id === pledge.substituteLineId);
  return {
    cells: [
      food,
      formats.bothLines(pledge.leastGrams),
      formats.bothLines(pledge.wantedGrams),
      formats.bothLines(pledge.mostGrams),
      isOwn ? ceilingWords(pledge, formats) : words.slip.ceilingKept,
      pledge.wholeBags ? words.slip.wholeBags : words.slip.shareBy(step),
      substitute ? nameOf(substitute.food, formats) : words.none,
    ],
  };
}

const ceilingWords = ({ ceiling }: BuyPledge, formats: Formats): string =>
  ceiling ? formats.perMass(ceiling) : formats.words.none;

/** A step keeps the unit that the buy counts it in, so that a pen writes what the book accepts. */
const stepWords = ({ stepUnits, massUnit }: PageLine): string => `${stepUnits} ${massUnit}`;

function costFacts(
  page: Page,
  { costs, formats }: { costs: ReadonlyMap<string, string>; formats: Formats },
): Fact[] {
  return page.lines
    .filter(({ id }) => costs.has(id))
    .map((line) => ({
      name: `${formats.words.slip.cost}: ${nameOf(line.food, formats)}`,
      value: `${costs.get(line.id) ?? ''} ${formats.currency}`,
    }));
}

function entryFacts(pledges: readonly BuyPledge[], formats: Formats): Fact[] {
  const { slip } = formats.words;
  const last = pledges.toSorted((a, b) => b.pledgedAt.getTime() - a.pledgedAt.getTime())[0];
  if (!last) return [];
  const isEnteredFor = pledges.some((pledge) => pledge.isEnteredFor);
  return [
    { name: slip.pledgedAt, value: formats.instantWithZone(last.pledgedAt) },
    { name: slip.enteredBy, value: isEnteredFor ? slip.enteredFor : slip.byHousehold },
  ];
}

/** What a pen wrote first says so: when it was written, and when it was keyed in. */
async function readKeyed(
  { context, formats }: Desk,
  { page, pledges }: { page: Page; pledges: readonly BuyPledge[] },
): Promise<Fact[]> {
  const { slip } = formats.words;
  const ids = new Set(pledges.map(({ pledgeId }) => pledgeId));
  const keyings = (await readKeyings(context, page.id)).filter(({ subjectId }) => ids.has(subjectId));
  const last = keyings.at(-1);
  if (!last) return [];
  return [
    {
      name: slip.fromPaper,
      value: slip.written(formats.instant(last.writtenAt), formats.instant(last.keyedAt)),
    },
  ];
}
