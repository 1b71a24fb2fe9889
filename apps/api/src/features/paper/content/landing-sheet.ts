import { spellCode } from '@sheafbook/units';
import { presentLandingSheet } from '../../landing/present.ts';
import { readLandingSheet } from '../../landing/use-cases.ts';
import { type Block, type Column, facts, figures, heading, type Row, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { type Desk, type MadePaper, nameOf, subject } from './making.ts';

type Landing = ReturnType<typeof presentLandingSheet>;
type Size = Landing['lines'][number];

/** The landing sheet (paper 4): bags that have their number are printed, those still to come have room for a pen. */
export async function makeLandingSheet({ context, formats }: Desk, buyId: string): Promise<MadePaper> {
  const sheet = await readLandingSheet(context, buyId);
  const landing = presentLandingSheet(sheet);
  const { words } = formats;
  const content = {
    about: [sheet.buy.name],
    blocks: [
      ...landing.orders
        .filter((order) => !order.isCancelled)
        .flatMap((order) => orderBlocks(landing, { order, formats })),
      text(words.landing.ring),
      text(words.landing.units),
      ...landing.lines.flatMap((size) => bagBlocks(size, formats)),
      {
        kind: 'signatures',
        boxes: [words.landing.signFirst, words.landing.signSecond, words.landing.signCarrier],
      } as const,
    ],
  };
  return { subject: subject('landing-sheet', { buyId }), contentWith: () => content, isLandscape: true };
}

type Order = Landing['orders'][number];

function orderBlocks(landing: Landing, { order, formats }: { order: Order; formats: Formats }): Block[] {
  const { words } = formats;
  const deliveries = landing.deliveries.filter(({ supplierId }) => supplierId === order.supplierId);
  const sizes = landing.lines.filter(({ orderNo }) => orderNo === order.orderNo);
  return [
    heading(`${words.order.orderNo(order.orderNo)}, ${order.supplier}`),
    ...(deliveries.length === 0
      ? [deliveryFacts(undefined, formats)]
      : deliveries.map((delivery) => deliveryFacts(delivery, formats))),
    table(
      [
        { name: words.landing.counts },
        { name: words.bag, isNumber: true },
        ...figures(words.landing.ordered, words.landing.counted, words.landing.short).map((column) => ({
          ...column,
          penWidth: 60,
        })),
      ],
      sizes.map((size) => ({
        ...(size.countedBags === null ? { kind: 'pen' as const } : {}),
        cells: [
          size.food ? nameOf(size.food, formats) : '',
          size.bagLabel,
          formats.count(size.orderedBags),
          size.countedBags === null ? '' : formats.count(size.countedBags),
          size.shortBags === null ? '' : formats.count(size.shortBags),
        ],
      })),
    ),
  ];
}

function deliveryFacts(delivery: Landing['deliveries'][number] | undefined, formats: Formats): Block {
  const { landing } = formats.words;
  return facts([
    delivery !== undefined && {
      name: landing.delivery(delivery.partNo),
      value: landing.claimBy(formats.day(delivery.claimByOn)),
    },
    { name: landing.carrier, value: delivery?.carrier ?? '' },
    { name: landing.arrivedAt, value: delivery ? formats.day(delivery.arrivedOn) : '' },
    { name: landing.countedBy, value: delivery?.countedBy ?? '' },
    { name: landing.carrierNote, value: delivery?.carrierNote ?? '' },
  ]);
}

function bagBlocks(size: Size, formats: Formats): Block[] {
  const { words } = formats;
  const food = size.food ? nameOf(size.food, formats) : '';
  const toCome = Math.max(0, (size.countedBags ?? size.orderedBags) - size.bags.length);
  const declared = `${size.bagLabel}\n${formats.grams(declaredOf(size))}`;
  const lastNo = Math.max(0, ...size.bags.map((bag) => bag.bagNo));
  return [
    heading(`${food}, ${size.bagLabel} (${formats.grams(declaredOf(size))})`),
    table(bagColumns(formats), [
      ...size.bags.map((bag) => bagRow(bag, formats)),
      ...Array.from({ length: toCome }, (_, at): Row => {
        const marks = [words.landing.conditionMarks, words.landing.decisionMarks];
        return { kind: 'pen', cells: [String(lastNo + at + 1), '', declared, '', '', '', ...marks, ''] };
      }),
    ]),
  ];
}

/** A bag label names the seller's own unit and size; grams of one bag come from any bag, or from the order. */
const declaredOf = (size: Size): number => size.bags[0]?.declaredGrams ?? size.bagGrams;

function bagColumns({ words }: Formats): Column[] {
  const { landing } = words;
  return [
    { name: landing.bagNo, isNumber: true, isKey: true },
    { name: landing.mark, penWidth: 90 },
    ...figures(landing.declared),
    ...figures(landing.gross, landing.tare, landing.net).map((column) => ({ ...column, penWidth: 62 })),
    { name: landing.condition, penWidth: 82 },
    { name: landing.decision, penWidth: 60 },
    { name: landing.photo, penWidth: 40 },
  ];
}

function bagRow(bag: Size['bags'][number], formats: Formats): Row {
  const { landing } = formats.words;
  const weight = (grams: number | null) => (grams === null ? '' : formats.bothLines(grams));
  const condition = landing.conditions[bag.condition] ?? bag.condition;
  const decision = landing.decisions[bag.decision] ?? bag.decision;
  return {
    cells: [
      `${bag.bagNo}\n${spellCode(bag.bagCode)}`,
      bag.supplierMark,
      weight(bag.declaredGrams),
      weight(bag.grossGrams),
      weight(bag.tareGrams),
      weight(bag.netGrams),
      [condition, bag.note].filter((part) => part !== '').join('\n'),
      bag.isOnHold ? `${decision}\n${landing.onHold}` : decision,
      '',
    ],
  };
}
