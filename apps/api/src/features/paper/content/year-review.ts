import { formatDecimal, spellCode, sumOf } from '@sheafbook/units';
import { SIGNERS } from '../../period/schema.ts';
import { readYearReview, type YearReview } from '../../year-review/use-cases.ts';
import { type Block, facts, figures, heading, type Row, section, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { type Desk, foodOf, type MadePaper, nameOf, saidOn, subject } from './making.ts';

/** What reviewer, treasurer and coordinator sign at a year's end: the year's figures, and that the book holds. */
export async function makeYearReview(
  { context, formats }: Desk,
  through: string | undefined,
): Promise<MadePaper> {
  const year = await readYearReview(context, { through });
  const { yearReview: words, currencyOnce } = formats.words;
  const { fromOn, throughOn } = year.period;
  const content = {
    about: [words.period(formats.day(fromOn), formats.day(throughOn))],
    blocks: [
      text(year.digestSha256 === null ? words.running : words.closed(year.digestSha256.slice(0, 12))),
      text(words.noHousehold),
      ...buyBlocks(year, formats),
      ...dayBlocks(year, formats),
      ...foodBlocks(year, formats),
      ...moneyBlocks(year, formats),
      ...proofBlocks(year, formats),
      ...exceptionBlocks(year, formats),
      heading(words.signatures),
      ...SIGNERS.map((duty) => text(signedAs(duty, year, formats))),
      text(currencyOnce(formats.currency)),
      { kind: 'signatures', boxes: SIGNERS.map((duty) => words.duties[duty] ?? duty) } as const,
    ],
  };
  return { subject: subject('year-review', { detail: throughOn }), contentWith: () => content };
}

const percent = (part: number, whole: number, { percent: say }: Formats): string =>
  say(whole === 0 ? 0 : Math.round((part * 10_000) / whole));

const plain = (...cells: readonly string[]): Row => ({ cells });
const sum = (...cells: readonly string[]): Row => ({ cells, kind: 'sum' });

const listed = (title: string, { words }: Formats, block: Block, rows: readonly unknown[]): Block[] =>
  section(title, rows, { block, nothing: words.yearReview.nothing });

/** What was saved against shelf price, on how much of the food, and of which food nobody noted a price. */
function savedFacts({ savings }: YearReview, formats: Formats) {
  const { yearReview: words } = formats.words;
  const unpriced = savings.foods.filter(({ savedMinorUnits }) => savedMinorUnits === null);
  const isPriced = unpriced.length < savings.foods.length;
  const saved = words.savedOf(
    formats.money(Math.abs(savings.savedMinorUnits)),
    ...([formats.both(savings.pricedGrams), formats.both(savings.grams)] as const),
    savings.savedMinorUnits < 0,
  );
  return [
    { name: words.saved, value: isPriced ? saved : words.savedNone },
    isPriced &&
      unpriced.length > 0 && {
        name: words.unpriced,
        value: unpriced.map(({ nameEn, nameEs }) => (formats.language === 'es' ? nameEs : nameEn)).join(', '),
      },
  ];
}

function buyBlocks({ buys, ...year }: YearReview, formats: Formats): Block[] {
  const { yearReview: words, goods, freight, buy, total } = formats.words;
  const cellsOf = (of: Omit<YearReview['buys'][number], 'name'>): string[] => [
    formats.bothLines(of.grams),
    ...[of.goodsMinorUnits, of.freightMinorUnits, of.otherMinorUnits, of.creditedMinorUnits].map(
      formats.money,
    ),
  ];
  const all = {
    grams: sumOf(buys.map(({ grams }) => grams)),
    goodsMinorUnits: sumOf(buys.map(({ goodsMinorUnits }) => goodsMinorUnits)),
    freightMinorUnits: sumOf(buys.map(({ freightMinorUnits }) => freightMinorUnits)),
    otherMinorUnits: sumOf(buys.map(({ otherMinorUnits }) => otherMinorUnits)),
    creditedMinorUnits: sumOf(buys.map(({ creditedMinorUnits }) => creditedMinorUnits)),
  };
  const columns = figures(words.mass, goods, freight, words.otherCosts, words.credited);
  return [
    ...listed(
      `${words.buys}: ${words.buysLead(buys.length, formats.both(all.grams))}`,
      formats,
      table(
        [{ name: buy, isKey: true }, ...columns],
        [...buys.map(({ name, ...of }) => plain(name, ...cellsOf(of))), sum(total, ...cellsOf(all))],
      ),
      buys,
    ),
    facts(savedFacts({ buys, ...year }, formats)),
  ];
}

function dayBlocks({ sessions, loans }: YearReview, formats: Formats): Block[] {
  const { yearReview: words } = formats.words;
  const { count } = formats;
  const { filled, good } = sessions;
  return [
    heading(words.sessions),
    facts([
      { name: words.signedDays, value: count(sessions.sessions) },
      { name: words.filled, value: count(filled) },
      filled > 0 && {
        name: words.firstPass,
        value: words.firstPassOf(count(good), count(filled), percent(good, filled, formats)),
      },
      { name: words.scrap, value: count(sessions.scrapPieces) },
    ]),
    heading(words.loans),
    facts([
      { name: words.lent, value: count(loans.loans) },
      { name: words.lateOnes, value: count(loans.late) },
    ]),
  ];
}

function foodBlocks({ coverage, gifts, lost, todayOn }: YearReview, formats: Formats): Block[] {
  const { yearReview: words } = formats.words;
  const { count, language } = formats;
  return [
    heading(words.coverage),
    text(
      coverage.isShown
        ? words.coverageMedian(
            formatDecimal(coverage.median, coverage.median.denominator === 1n ? 0 : 1, language),
            count(coverage.households),
            formats.day(todayOn),
          )
        : words.coverageHidden,
    ),
    heading(words.gifts),
    facts([
      { name: words.given, value: `${formats.both(gifts.grams)} (${formats.grams(gifts.grams)})` },
      { name: words.meals, value: count(gifts.meals) },
      { name: words.manifests, value: count(gifts.manifests) },
      gifts.manifests > 0 && {
        name: words.receipts,
        value: words.receiptsOf(
          ...([count(gifts.received), count(gifts.manifests)] as const),
          percent(gifts.received, gifts.manifests, formats),
        ),
      },
    ]),
    ...listed(
      words.discards,
      formats,
      table(
        [{ name: words.cause, isKey: true }, ...figures(words.mass)],
        lost.map(({ by, grams }) => plain(words.causes[by] ?? by, formats.bothLines(grams))),
      ),
      lost,
    ),
  ];
}

function moneyBlocks({ fund, balance, seesAmounts }: YearReview, formats: Formats): Block[] {
  const { yearReview: words } = formats.words;
  const { money } = formats;
  return [
    heading(words.fund),
    facts([
      { name: words.opening, value: money(fund.openingMinorUnits) },
      { name: words.came, value: money(fund.cameMinorUnits) },
      { name: words.went, value: money(fund.wentMinorUnits) },
      { name: words.closing, value: money(fund.closingMinorUnits) },
    ]),
    heading(words.trial),
    ...(seesAmounts ? [trialTable(balance, formats)] : [text(words.withoutAccounts)]),
    text(balance.agrees ? words.agrees : words.agreesNot),
  ];
}

function trialTable(balance: YearReview['balance'], { words, money }: Formats): Block {
  const { yearReview: of, total } = words;
  return table(
    [{ name: of.account, isKey: true }, ...figures(of.debit, of.creditSide)],
    [
      ...balance.rows.map(({ number, name, debitMinorUnits, creditMinorUnits }) =>
        plain(`${number} ${of.charts[number] ?? name}`, money(debitMinorUnits), money(creditMinorUnits)),
      ),
      sum(total, money(balance.debitMinorUnits), money(balance.creditMinorUnits)),
    ],
  );
}

function proofBlocks({ findings, traces, counts, seed }: YearReview, formats: Formats): Block[] {
  const { yearReview: words, food, yes, no } = formats.words;
  const { count, money } = formats;
  return [
    heading(words.invariants),
    table(
      [
        { name: words.number, isKey: true },
        { name: words.invariant },
        { name: words.figure },
        { name: words.state },
      ],
      findings.map(({ number, invariant, figure, holds }) =>
        plain(
          String(number),
          saidOn(invariant, formats),
          saidOn(figure, formats),
          holds ? words.passes : words.fails,
        ),
      ),
    ),
    ...listed(
      words.traces,
      formats,
      table(
        [
          { name: words.code, isKey: true },
          { name: words.thing },
          ...figures(words.cameG, words.wentG, words.leftG),
          { name: words.state },
        ],
        traces.traces.map((trace) => traceRow(trace, formats)),
      ),
      traces.traces,
    ),
    ...(traces.traces.length === 0 ? [] : [text(words.drawn(shortSeed(seed), count(traces.candidates)))]),
    heading(words.counts),
    text(words.counted(counts.counted, counts.differences.length)),
    ...(counts.differences.length === 0
      ? []
      : [
          table(
            [
              { name: words.code, isKey: true },
              { name: food },
              ...figures(words.book, words.countedG, words.difference, words.worth),
              { name: words.booked },
            ],
            counts.differences.map((of) =>
              plain(
                spellCode(of.code),
                foodOf(of, formats),
                ...[of.bookGrams, of.countedGrams].map(count),
                formats.grams(of.differenceGrams),
                money(of.minorUnits),
                of.isBooked ? yes : no,
              ),
            ),
          ),
        ]),
  ];
}

/** A digest is drawn by whole; on paper its beginning tells it apart, and the whole stands on the page of the close. */
const shortSeed = (seed: string): string => (seed.length > 20 ? `${seed.slice(0, 12)}…` : seed);

function traceRow(trace: YearReview['traces']['traces'][number], formats: Formats): Row {
  const { words, count } = formats;
  const { yearReview: of } = words;
  const thing = of.things[trace.kind] ?? trace.kind;
  if (trace.kind === 'entry') return plain(trace.code, thing, '', '', '', of.inBook);
  const said = (grams: number | null) => (grams === null ? '' : count(grams));
  const { addsUp, inGrams, outGrams, leftGrams, food } = trace;
  return plain(
    ...[
      spellCode(trace.code),
      `${thing}, ${nameOf(food, formats)}`,
      said(inGrams),
      said(outGrams),
      said(leftGrams),
    ],
    addsUp === null ? of.atHome : addsUp ? of.addsUp : of.addsUpNot,
  );
}

function exceptionBlocks(
  { corrections, overrides, looks, seesAmounts }: YearReview,
  formats: Formats,
): Block[] {
  const { yearReview: words } = formats.words;
  const { count, money, day } = formats;
  const said = (minorUnits: number | null) => (minorUnits === null || !seesAmounts ? '' : money(minorUnits));
  return [
    ...listed(
      words.exceptions,
      formats,
      table(
        [{ name: words.kind, isKey: true }, ...figures(words.times, words.money)],
        overrides.map(({ kind, count: times, minorUnits }) =>
          plain(words.overrideKinds[kind] ?? kind, count(times), said(minorUnits)),
        ),
      ),
      overrides,
    ),
    ...listed(
      words.corrections,
      formats,
      table(
        [
          { name: formats.words.statement.day, isKey: true },
          { name: formats.words.statement.entry },
          { name: words.undone },
          { name: words.byWhom },
          ...figures(words.money),
        ],
        corrections.map(({ onDay, entryNo, undoneEntryNo, by, minorUnits }) =>
          plain(day(onDay), `E ${entryNo}`, `E ${undoneEntryNo}`, by, said(minorUnits)),
        ),
      ),
      corrections,
    ),
    ...listed(
      words.looks,
      formats,
      table(
        [{ name: words.duty, isKey: true }, ...figures(words.looksHead)],
        looks.map(({ duties, looks: times }) => plain(dutiesOf(duties, formats), count(times))),
      ),
      looks,
    ),
  ];
}

/** The duties come as the database joins them, one space between. */
const dutiesOf = (duties: string, { words: { yearReview } }: Formats): string =>
  duties === ''
    ? yearReview.noDuty
    : duties
        .split(' ')
        .map((duty) => yearReview.duties[duty] ?? duty)
        .join(', ');

function signedAs(duty: (typeof SIGNERS)[number], { signatures }: YearReview, formats: Formats): string {
  const { yearReview: words } = formats.words;
  const name = words.duties[duty] ?? duty;
  const signed = signatures.find((signature) => signature.duty === duty);
  if (!signed) return words.notSigned(name);
  const remarks = signed.remarks === '' ? '' : `: ${signed.remarks}`;
  return `${words.signed(name, signed.signedBy, formats.instant(signed.signedAt))}${remarks}`;
}
