import { spellCode } from '@sheafbook/units';
import { presentStatement } from '../../statement/present.ts';
import { readStatement } from '../../statement/use-cases.ts';
import { type Block, facts, figures, heading, type Row, section, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { type Desk, type MadePaper, subject } from './making.ts';

type Statement = ReturnType<typeof presentStatement>;

/** What a deposit asks of a household for a buy that has not been charged yet. */
export type AskedDeposit = {
  readonly buy: string;
  readonly askedMinorUnits: number;
  readonly heldMinorUnits: number;
  readonly dueOn: string;
};

/** A household's statement (paper 10, layout of job map 4.6): it adds up by hand, line by line. */
export async function makeStatement(
  { context, formats }: Desk,
  wish: {
    householdId: string;
    from: string | undefined;
    to: string | undefined;
    listAsked: (householdId: string) => Promise<readonly AskedDeposit[]>;
  },
): Promise<MadePaper> {
  const { householdId, from, to, listAsked } = wish;
  const statement = presentStatement(await readStatement(context, householdId, { from, to, format: 'json' }));
  const asked = await listAsked(householdId);
  const { words } = formats;
  const contentWith = (code: string) => ({
    about: [
      words.seatName(statement.household.name, statement.household.seat),
      words.statement.period(formats.longDay(statement.from), formats.longDay(statement.to)),
    ],
    blocks: [
      leadOf(statement, formats),
      linesTable(statement, formats),
      ...statement.buys.flatMap((buy) => buyBlocks(buy, formats)),
      ...depositBlocks(statement, { asked, formats }),
      {
        kind: 'side-by-side',
        left: [
          heading(words.statement.howToPay),
          text(words.statement.payWords(statement.household.name, spellCode(code))),
        ],
        right: [
          heading(words.statement.whomToAsk),
          text(`${words.statement.treasurer(statement.ask.join(', '))} ${words.statement.rounding}`),
        ],
      } as const,
    ],
  });
  return {
    subject: subject('statement', { householdId, detail: `${statement.from}/${statement.to}` }),
    contentWith,
    isLandscape: 'when-large',
  };
}

function leadOf({ closingMinorUnits, to, currency }: Statement, formats: Formats): Block {
  const { statement } = formats.words;
  const before =
    closingMinorUnits > 0 ? statement.owe : closingMinorUnits < 0 ? statement.owed : statement.even;
  const strong = formats.money(Math.abs(closingMinorUnits));
  return { kind: 'lead', before, strong, after: statement.asOn(currency, formats.longDay(to)) };
}

function linesTable(statement: Statement, formats: Formats): Block {
  const words = formats.words.statement;
  const amount = (minorUnits: number) => (minorUnits === 0 ? '' : formats.money(minorUnits));
  const opening: Row = {
    cells: [
      formats.day(statement.from),
      '',
      words.broughtForward,
      '',
      '',
      '',
      formats.money(statement.openingMinorUnits),
    ],
  };
  const lines = statement.lines.map(
    (line): Row => ({
      cells: [
        formats.day(line.onDay),
        words.entryNo(line.entryNo),
        whatWords(line, formats),
        line.buy ?? '',
        amount(line.chargeMinorUnits),
        amount(line.paymentMinorUnits),
        formats.money(line.balanceMinorUnits),
      ],
    }),
  );
  const sum: Row = {
    kind: 'sum',
    cells: [
      words.sum,
      '',
      '',
      '',
      formats.money(statement.chargesMinorUnits),
      formats.money(statement.paymentsMinorUnits),
      formats.money(statement.closingMinorUnits),
    ],
  };
  return table(
    [
      { name: words.day, isKey: true },
      { name: words.entry },
      { name: words.what },
      { name: words.ref },
      ...figures(words.charge, words.paid, words.balance),
    ],
    [opening, ...lines, sum],
  );
}

function whatWords(line: Statement['lines'][number], { words }: Formats): string {
  const { statement } = words;
  return [
    statement.entries[line.what] ?? line.what,
    line.note,
    line.reversesEntryNo === null ? '' : statement.reverses(line.reversesEntryNo),
    line.reversedByEntryNo === null ? '' : statement.reversedBy(line.reversedByEntryNo),
  ]
    .filter((part) => part !== '')
    .join(', ');
}

function buyBlocks(buy: Statement['buys'][number], formats: Formats): Block[] {
  const { words } = formats;
  const perMass = (minorUnits: number, grams: number): string[] =>
    grams > 0 && minorUnits >= 0
      ? (['lb', 'kg'] as const).map((unit) => formats.price({ minorUnits, grams }, unit))
      : ['', ''];
  const grams = buy.foods.reduce((sum, food) => sum + food.awardGrams, 0);
  const rest = [
    { name: words.freight, minorUnits: buy.freightMinorUnits },
    { name: words.statement.other, minorUnits: buy.otherMinorUnits },
  ].filter(({ minorUnits }) => minorUnits !== 0);
  return [
    heading(words.statement.madeOf(buy.buy, formats.money(buy.totalMinorUnits))),
    table(
      [
        { name: words.food },
        ...figures(
          words.statement.got,
          '',
          words.perPound,
          words.perKilogram,
          words.statement.goodsLessCredits,
        ),
      ],
      [
        ...buy.foods.map(
          ({ food, awardGrams, goodsMinorUnits }): Row => ({
            cells: [
              food?.[formats.language] ?? '',
              formats.grams(awardGrams),
              formats.bothLines(awardGrams),
              ...perMass(goodsMinorUnits, awardGrams),
              formats.money(goodsMinorUnits),
            ],
          }),
        ),
        ...rest.map(
          ({ name, minorUnits }): Row => ({ cells: [name, '', '', '', '', formats.money(minorUnits)] }),
        ),
        {
          kind: 'sum',
          cells: [
            words.whole,
            formats.grams(grams),
            formats.bothLines(grams),
            ...perMass(buy.totalMinorUnits, grams),
            formats.money(buy.totalMinorUnits),
          ],
        },
      ],
    ),
  ];
}

function depositBlocks(
  statement: Statement,
  { asked, formats }: { asked: readonly AskedDeposit[]; formats: Formats },
): Block[] {
  const words = formats.words.statement;
  const held = statement.deposits.map(({ buy, heldMinorUnits }) => ({
    name: buy,
    value: formats.money(heldMinorUnits),
  }));
  return [
    ...section(words.depositsHeld, held, { block: facts(held), nothing: formats.words.none }),
    ...(asked.length === 0
      ? []
      : [
          heading(words.depositsAsked),
          table(
            [{ name: formats.words.buy }, ...figures(words.asked, words.held), { name: words.dueOn }],
            asked.map((ask) => ({
              cells: [
                ask.buy,
                formats.money(ask.askedMinorUnits),
                formats.money(ask.heldMinorUnits),
                formats.day(ask.dueOn),
              ],
            })),
          ),
        ]),
  ];
}
