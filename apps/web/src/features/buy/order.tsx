import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { buyQuery, fillQuery, personsQuery, quotesQuery } from '../../api/queries.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Ledger, State } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { Agree } from './agree.tsx';
import type { BuyPage } from './buy-body.ts';
import { ConfirmForm } from './confirm-form.tsx';
import { foodNameOf } from './food-name.ts';
import { type OrderNow, ordersNow } from './order-now.ts';
import { PlacedOrders } from './placed-orders.tsx';
import { consentsQuery, depositsQuery, nextQuery, ordersQuery } from './run-queries.ts';
import { Stages } from './stages.tsx';
import { useOrderText, useRunText } from './words.ts';
import './run.css';

const SEES_DEPOSITS = ['coordinator', 'treasurer', 'reviewer'];

/** The order: what goes to which supplier, who has agreed, and afterwards its numbers. */
export function OrderBuy() {
  const param = useParams({ from: '/s/$storehouse/buys/$buy/order' });
  const buy = useQuery(buyQuery(param));
  const orders = useQuery(ordersQuery(param));
  return (
    <Loaded isPage reading={joined(buy, orders)}>
      {([page, { orders: placed }]) => (
        <>
          <div className="row place no-print">
            <Link className="who" to="/s/$storehouse/buys/$buy/run" params={param}>
              <BackIcon />
              {page.name}
            </Link>
          </div>
          {placed.length > 0 ? (
            <PlacedOrders buy={page} orders={placed} />
          ) : page.stage === 'fixed' ? (
            <ToOrder buy={page} />
          ) : (
            <TooEarly buy={page} />
          )}
        </>
      )}
    </Loaded>
  );
}

function TooEarly({ buy }: { buy: BuyPage }) {
  const run = useRunText();
  const { storehouse } = useHouse();
  return (
    <>
      <h1>{run.notOrderedYet(buy.name)}</h1>
      <Stages stage={buy.stage} />
      <p>
        <Link to="/s/$storehouse/buys/$buy/run" params={{ storehouse, buy: buy.id }}>
          {run.nextStep}
        </Link>
      </p>
    </>
  );
}

function ToOrder({ buy }: { buy: BuyPage }) {
  const words = useOrderText();
  const { storehouse, duties, format } = useHouse();
  const param = { storehouse, buy: buy.id };
  const next = useQuery(nextQuery(param));
  const fill = useQuery(fillQuery(param));
  const quotes = useQuery(quotesQuery(param));
  const consents = useQuery(consentsQuery(param));
  const persons = useQuery(personsQuery({ storehouse }));
  useTitle(`${words.orders}, ${buy.name}`);
  return (
    <Loaded isPage reading={joined(joined(next, fill), joined(quotes, joined(consents, persons)))}>
      {([[step, filled], [{ quotes: offered }, [{ consents: given }, people]]]) => {
        const orders = ordersNow(filled, offered);
        const total = orders.reduce((sum, order) => sum + order.totalMinorUnits, 0);
        const reckoned = filled.goodsMinorUnits + filled.freightMinorUnits;
        return (
          <>
            <h1>{words.orderTitle(buy.name, format.money(total), filled.currency)}</h1>
            <Stages stage={buy.stage} />
            <div className="run">
              <div className="stack run-step">
                <Agree
                  buy={buy}
                  next={step}
                  consents={given}
                  nameOf={(personId) => people.find(({ id }) => id === personId)?.name ?? ''}
                  totalMinorUnits={total}
                  suppliers={orders.length}
                />
              </div>
              <div className="stack run-foods">
                {total === reckoned ? null : (
                  <p className="said watch-said">{words.reckonedAt(format.money(reckoned))}</p>
                )}
                {orders.map((order) => (
                  <Planned key={order.quote.id} buy={buy} order={order} />
                ))}
                {duties.includes('coordinator') ? (
                  <section>
                    <h2>{words.confirmTerms}</h2>
                    {orders.map(({ quote }) => (
                      <ConfirmForm key={quote.id} buy={buy} quote={quote} />
                    ))}
                  </section>
                ) : null}
              </div>
              {duties.some((duty) => SEES_DEPOSITS.includes(duty)) ? (
                <div className="run-rest">
                  <DepositStates buy={buy.id} />
                </div>
              ) : null}
            </div>
          </>
        );
      }}
    </Loaded>
  );
}

/** What one supplier will be sent. */
function Planned({ buy, order }: { buy: BuyPage; order: OrderNow }) {
  const words = useOrderText();
  const { format } = useHouse();
  const { supplier } = order.quote;
  return (
    <section className="stack">
      <h2>{supplier.name}</h2>
      <Ledger
        caption={supplier.name}
        columns={[
          { name: words.food },
          { name: words.bag },
          { name: words.bags, isNumber: true },
          { name: words.goods, isNumber: true },
        ]}
        rows={[
          ...order.bags.map((bag) => {
            const line = buy.lines.find(({ id }) => id === bag.lineId);
            return {
              key: bag.bagOfferId,
              cells: [
                line ? foodNameOf(line, format.language) : '',
                bag.bagLabel,
                format.count(bag.bags),
                format.money(bag.goodsMinorUnits),
              ],
            };
          }),
          { key: 'freight', cells: [words.freight, '', '', format.money(order.freightMinorUnits)] },
          { key: 'sum', isSum: true, cells: [words.total, '', '', format.money(order.totalMinorUnits)] },
        ]}
      />
    </section>
  );
}

/** Whether the order still waits for a household: yes or no, never how much, nor why. */
function DepositStates({ buy }: { buy: string }) {
  const words = useOrderText();
  const run = useRunText();
  const { storehouse, duties } = useHouse();
  const deposits = useQuery(depositsQuery({ storehouse, buy }));
  return (
    <section className="stack">
      <h2>{words.deposits}</h2>
      <Loaded reading={deposits}>
        {({ deposits: rows }) => (
          <Ledger
            caption={words.deposits}
            columns={[{ name: words.household }, { name: words.depositState }]}
            rows={rows.map(({ householdId, household, isSettled }) => ({
              key: householdId,
              cells: [
                household,
                <State
                  key="state"
                  kind={isSettled ? 'well' : 'watch'}
                  word={isSettled ? words.depositIn : words.depositMissing}
                />,
              ],
            }))}
          />
        )}
      </Loaded>
      {duties.includes('treasurer') ? null : <p className="soft">{run.amountsHidden}</p>}
    </section>
  );
}
