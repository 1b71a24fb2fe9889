import { useHouse } from '../../ui/house.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import type { BuyPage } from './buy-body.ts';
import { foodNameOf } from './food-name.ts';
import type { Order } from './run-queries.ts';
import { Stages } from './stages.tsx';
import { useOrderText } from './words.ts';

/** The orders as they went out, each under its number, to print or to read out. */
export function PlacedOrders({ buy, orders }: { buy: BuyPage; orders: readonly Order[] }) {
  const words = useOrderText();
  useTitle(`${words.orders}, ${buy.name}`);
  return (
    <>
      <h1>{words.orderedTitle(buy.name, orders.length, orders.map(({ orderNo }) => orderNo).join(', '))}</h1>
      <Stages stage={buy.stage} />
      {orders.map((order) => (
        <OnePlaced key={order.id} order={order} />
      ))}
      <PaperLinks
        papers={orders.map(({ orderNo }) => ({
          kind: 'order',
          path: `buys/${buy.id}/papers/order?order=${orderNo}`,
          of: String(orderNo),
        }))}
      />
    </>
  );
}

function OnePlaced({ order }: { order: Order }) {
  const words = useOrderText();
  const { format } = useHouse();
  const title = `${words.orderNo(order.orderNo)}, ${order.supplier.name}`;
  return (
    <section className="stack">
      <div className="row">
        <h2>{title}</h2>
        <span className="soft">{words.orderedOn(format.day(order.orderedOn))}</span>
      </div>
      {order.cancelledAt === null ? null : (
        <p className="said watch-said">{words.cancelled(order.cancellationNote)}</p>
      )}
      <Ledger
        caption={title}
        columns={[
          { name: words.food },
          { name: words.bag },
          { name: words.bags, isNumber: true },
          { name: words.aBag, isNumber: true },
          { name: words.goods, isNumber: true },
        ]}
        rows={[
          ...order.lines.map((line) => ({
            key: line.bagOfferId,
            cells: [
              foodNameOf(line, format.language),
              line.bagLabel,
              format.count(line.bags),
              line.bagPriceMinorUnits === null ? '' : format.money(line.bagPriceMinorUnits),
              format.money(line.goodsMinorUnits),
            ],
          })),
          { key: 'freight', cells: [words.freight, '', '', '', format.money(order.freightMinorUnits)] },
          {
            key: 'sum',
            isSum: true,
            cells: [words.total, format.mass(order.grams), '', '', format.money(order.totalMinorUnits)],
          },
        ]}
      />
      <dl className="figures">
        {order.deliverTo === '' ? null : (
          <div>
            <dt>{words.deliverTo}</dt>
            <dd>{order.deliverTo}</dd>
          </div>
        )}
        {order.contacts.length === 0 ? null : (
          <div>
            <dt>{words.askFor}</dt>
            <dd>
              {order.contacts.map(({ name, phone }) => [name, phone].filter(Boolean).join(', ')).join('; ')}
            </dd>
          </div>
        )}
        {order.note === '' ? null : (
          <div>
            <dt>{words.note}</dt>
            <dd>{order.note}</dd>
          </div>
        )}
      </dl>
    </section>
  );
}
