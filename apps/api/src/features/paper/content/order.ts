import { fieldProblem, Problem } from '../../../platform/problem.ts';
import { presentOrders } from '../../order/present.ts';
import { readOrders } from '../../order/use-cases.ts';
import { type Block, facts, figures, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { type Desk, type MadePaper, nameOf, subject } from './making.ts';

type Order = ReturnType<typeof presentOrders>['orders'][number];

/** An order as it goes to its supplier (paper 3): one supplier never reads what another is asked for. */
export async function makeOrder(
  { context, formats }: Desk,
  wish: { buyId: string; orderNo: number | undefined },
): Promise<MadePaper> {
  const { orders } = presentOrders(await readOrders(context, wish.buyId), context.actor);
  const order = chooseOrder(orders, wish.orderNo);
  const { words } = formats;
  const content = {
    about: [words.order.orderNo(order.orderNo), order.supplier.name],
    blocks: [
      ...(order.cancelledAt === null
        ? []
        : [text(words.order.cancelled(formats.instant(new Date(order.cancelledAt))))]),
      headFacts(order, formats),
      lineTable(order, formats),
      facts([
        { name: words.order.freightTerms, value: freightTerms(order, formats) },
        { name: words.order.payment, value: words.order.paymentTerms },
        order.note !== '' && { name: words.order.note, value: order.note },
      ]),
      text(`${words.order.please}: ${words.order.pleaseList}`),
      { kind: 'signatures', boxes: [words.order.forStorehouse, words.order.forSupplier] } as const,
    ],
  };
  return {
    subject: subject('order', { buyId: wish.buyId, subjectId: order.id }),
    contentWith: () => content,
  };
}

function chooseOrder(orders: readonly Order[], orderNo: number | undefined): Order {
  const named = orderNo === undefined ? orders : orders.filter((order) => order.orderNo === orderNo);
  const [first, second] = named;
  if (!first)
    throw new Problem('thing-not-found', { thing: 'order', detail: 'Nothing of this buy was ordered.' });
  if (second)
    throw fieldProblem(
      'invalid-input',
      'order',
      `This buy has the orders ${orders.map((order) => order.orderNo).join(', ')}: say which one.`,
    );
  return first;
}

function headFacts(order: Order, formats: Formats): Block {
  const { words } = formats;
  const reference = [order.quote.reference, formats.day(order.quote.validUntil)].filter(
    (part) => part !== '',
  );
  const contacts = order.contacts.map(({ name, phone }) =>
    [words.order.coordinator, name, phone].filter((part) => part !== '').join(', '),
  );
  return facts([
    { name: words.order.date, value: formats.day(order.orderedOn) },
    { name: words.order.reference, value: reference.join(', ') },
    order.supplier.contact !== '' && { name: words.supplier, value: order.supplier.contact },
    { name: words.order.deliverTo, value: order.deliverTo || words.open },
    {
      name: words.order.window,
      value: order.landingOn === null ? words.open : formats.day(order.landingOn),
    },
    { name: words.order.contact, value: contacts.join('\n') || words.none },
    { name: words.order.needs, value: words.order.needsMass(formats.both(order.grams)) },
  ]);
}

function lineTable(order: Order, formats: Formats): Block {
  const { words } = formats;
  return table(
    [
      { name: words.order.supplierCode, penWidth: 55 },
      { name: words.food },
      { name: words.order.bagSize, isNumber: true },
      ...figures(words.bags, words.order.price, `${words.order.lineTotal} ${order.currency}`),
    ],
    [
      ...order.lines.map((line) => ({
        cells: [
          '',
          nameOf(line.food, formats),
          `${line.bagLabel}\n${formats.grams(line.bagGrams)}`,
          formats.count(line.bags),
          line.bagPriceMinorUnits === null ? words.order.byStep : formats.money(line.bagPriceMinorUnits),
          formats.money(line.goodsMinorUnits),
        ],
      })),
      { cells: ['', words.goods, '', '', '', formats.money(order.goodsMinorUnits)] },
      { cells: ['', words.freight, '', '', '', formats.money(order.freightMinorUnits)] },
      {
        kind: 'sum' as const,
        cells: [
          '',
          words.total,
          formats.bothLines(order.grams),
          formats.count(order.lines.reduce((sum, line) => sum + line.bags, 0)),
          '',
          formats.money(order.totalMinorUnits),
        ],
      },
    ],
  );
}

function freightTerms({ freightTerms: terms }: Order, formats: Formats): string {
  const { words } = formats;
  const steps = terms.steps.map(({ fromGrams, minorUnits }) =>
    fromGrams === 0
      ? formats.money(minorUnits)
      : words.order.freightFrom(formats.both(fromGrams), formats.money(minorUnits)),
  );
  const free =
    terms.freeFromGoodsMinorUnits === null
      ? []
      : [words.order.freightFree(formats.money(terms.freeFromGoodsMinorUnits))];
  return [...steps, ...free].join('; ') || words.none;
}
