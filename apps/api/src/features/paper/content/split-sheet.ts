import { sumOf } from '@sheafbook/units';
import { presentSplit } from '../../split/present.ts';
import { readSplit, type SplitSheet } from '../../split/use-cases.ts';
import { type Block, facts, figures, heading, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { type Desk, type MadePaper, nameOf, saidOn, subject } from './making.ts';

type Split = ReturnType<typeof presentSplit>;
type Share = Split['shares'][number];

/** The split sheet (paper 5): seats instead of names, and awards only, never what a rule read to find them. */
export async function makeSplitSheet({ context, formats }: Desk, splitId: string): Promise<MadePaper> {
  const sheet = await readSplit(context, splitId);
  const split = presentSplit(sheet);
  const { words } = formats;
  const content = {
    about: [`${nameOf(sheet.food, formats)}, ${words.split.round(split.roundNo)}`],
    blocks: [
      ...(split.undoneAt === null
        ? []
        : [text(words.split.undone(formats.instant(new Date(split.undoneAt))))]),
      {
        kind: 'lead',
        before: words.split.landed,
        strong: formats.both(split.landedGrams),
        after: words.split.forClaims(formats.both(split.claimedGrams)),
      } as const,
      text(saidOn(split.sentence, formats)),
      text(words.split.gramsInRule),
      factsOf(split, sheet, formats),
      heading(words.split.shares),
      sharesTable(split, formats),
      ...chargeBlocks(split, formats),
      text([rangeOf(split, formats), words.split.tieBreak, words.split.spare].filter(Boolean).join(' ')),
      { kind: 'signatures', boxes: [words.split.doneBy, words.split.seenBy] } as const,
    ],
  };
  return {
    subject: subject('split-sheet', { buyId: split.buyId, subjectId: splitId }),
    contentWith: () => content,
    isLandscape: 'when-large',
  };
}

function factsOf(split: Split, sheet: SplitSheet, formats: Formats): Block {
  const { words } = formats;
  const lots = [...new Set(sheet.pieces.map(({ lotId }) => lotId))];
  const losses = split.losses.map(
    ({ cause, grams }) => `${words.split.causes[cause] ?? cause}: ${formats.grams(grams)}`,
  );
  return facts([
    { name: words.split.rule, value: words.splitRules[split.rule] ?? split.rule },
    { name: words.split.landed, value: formats.grams(split.landedGrams) },
    { name: words.split.lots, value: formats.count(lots.length) },
    { name: words.split.losses, value: losses.join('\n') || words.none },
    { name: words.bags, value: words.split.pieceCount(split.pieceCount, split.isFewestPieces) },
  ]);
}

const seatOf = ({ isCommonStock, seat }: Share, { words }: Formats): string =>
  isCommonStock ? words.commonStock : words.seat(seat);

function sharesTable(split: Split, formats: Formats): Block {
  const { words } = formats;
  const inGrams = (grams: number) => formats.count(grams);
  const { claim, exact, award, grams, pieces } = words.split;
  return table(
    [{ name: words.household, isKey: true }, ...figures(claim, grams, exact, award, grams), { name: pieces }],
    [
      ...split.shares.map((share) => ({
        cells: [
          seatOf(share, formats),
          formats.bothLines(share.claimGrams),
          inGrams(share.claimGrams),
          exactWords(share.exactAward, formats),
          formats.bothLines(share.awardGrams),
          `${inGrams(share.awardGrams)}${share.gotSpareGram ? ' +' : ''}`,
          share.pieces
            .map((piece) => words.split.piece(String(piece.bagNo), formats.grams(piece.grams)))
            .join('\n'),
        ],
      })),
      {
        kind: 'sum' as const,
        cells: [
          words.allHouseholds,
          formats.bothLines(split.claimedGrams),
          inGrams(split.claimedGrams),
          '',
          formats.bothLines(split.awardedGrams),
          inGrams(split.awardedGrams),
          '',
        ],
      },
    ],
  );
}

/** "63504/5" as "12700 4/5": a whole number and what is left of one, since nobody divides in their head. */
function exactWords(exact: string, formats: Formats): string {
  return exact.replaceAll(/(\d+)(?:\/(\d+))?/g, (_, top: string, bottom = '1') => {
    const [numerator, denominator] = [BigInt(top), BigInt(bottom)];
    const whole = formats.count(Number(numerator / denominator));
    const rest = numerator % denominator;
    if (rest === 0n) return whole;
    return whole === '0' ? `${rest}/${denominator}` : `${whole} ${rest}/${denominator}`;
  });
}

function chargeBlocks(split: Split, formats: Formats): Block[] {
  const { words } = formats;
  const costLines = [
    ...new Set(split.shares.flatMap((share) => share.charges.map(({ costLine }) => costLine))),
  ].toSorted(byKind);
  if (costLines.length === 0) return [];
  const rows = split.shares.map((share) => {
    const cents = costLines.map((costLine) =>
      sumOf(
        share.charges.filter((charge) => charge.costLine === costLine).map(({ minorUnits }) => minorUnits),
      ),
    );
    return { share, cents: [...cents, sumOf(cents)] };
  });
  const sums = [...costLines, 'total'].map((_, at) => sumOf(rows.map(({ cents }) => cents[at] ?? 0)));
  return [
    heading(words.split.charges),
    table(
      [
        { name: words.household, isKey: true },
        ...figures(
          ...costLines.map((costLine) => costLineWords(costLine, formats)),
          `${words.total} ${formats.currency}`,
        ),
      ],
      [
        ...rows.map(({ share, cents }) => ({
          cells: [seatOf(share, formats), ...cents.map((amount) => formats.money(amount))],
        })),
        { kind: 'sum' as const, cells: [words.whole, ...sums.map((amount) => formats.money(amount))] },
      ],
    ),
    text(words.split.chargesNote),
  ];
}

const KINDS = ['goods', 'freight', 'other', 'levy'];

/** Goods first, then freight, then the rest. */
function byKind(a: string, b: string): number {
  const rank = (costLine: string) =>
    (KINDS.indexOf(costLine.split(':')[0] ?? '') + KINDS.length + 1) % (KINDS.length + 1);
  return rank(a) - rank(b) || (a < b ? -1 : 1);
}

function costLineWords(costLine: string, { words }: Formats): string {
  const [kind = '', basis = ''] = costLine.replace(/^late:/, '').split(':');
  const late = costLine.startsWith('late:') ? words.costLines.late : undefined;
  return [words.costLines[kind] ?? kind, kind === 'goods' ? undefined : words.basisOfLine[basis], late]
    .filter((part) => part !== undefined)
    .join(' ');
}

function rangeOf({ ratioRange }: Split, formats: Formats): string {
  if (!ratioRange) return '';
  const { leastHundredthsOfPercent, mostHundredthsOfPercent } = ratioRange;
  return formats.words.split.range(
    formats.percent(leastHundredthsOfPercent),
    formats.percent(mostHundredthsOfPercent),
  );
}
