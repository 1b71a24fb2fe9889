import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import type { BuyPage } from './buy-body.ts';
import { foodNameOf } from './food-name.ts';
import type { Comparison } from './run-queries.ts';
import { isLineAhead } from './tips.ts';
import { useQuotesText } from './words.ts';

/** Of all ways to buy what is wanted, the cheapest with every supplier's freight and minimum. */
type Props = { buy: BuyPage; comparison: Comparison };

export function Basket({ buy, comparison }: Props) {
  const words = useQuotesText();
  const { storehouse, duties } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, buy: buy.id };
  const differing = (comparison.basket?.lines ?? []).flatMap(({ buyLineId, quoteId }) => {
    const line = buy.lines.find(({ id }) => id === buyLineId);
    return line && line.quoteId !== quoteId ? [{ line, quoteId }] : [];
  });
  const taking = useMutation({
    mutationFn: async () => {
      // One after another: each choice is a change of its own line, and the first refusal stops the rest.
      for (const { line, quoteId } of differing)
        await ask(
          api.storehouses[':storehouse'].buys[':buy'].lines[':line'].quote.$put({
            param: { ...param, line: line.id },
            json: { version: line.version, quoteId },
          }),
        );
    },
    onSettled: () => queries.invalidateQueries({ queryKey: ['buy', param] }),
  });
  return (
    <section className="stack">
      <h2>{words.basket}</h2>
      <BasketTable buy={buy} comparison={comparison} />
      {duties.includes('coordinator') && isLineAhead(buy.stage) && differing.length > 0 ? (
        <div>
          <button type="button" className="btn" disabled={taking.isPending} onClick={() => taking.mutate()}>
            {words.takeBasket}
          </button>
        </div>
      ) : null}
      {taking.error ? <ProblemSaid error={taking.error} /> : null}
    </section>
  );
}

/** From whom what is bought in the cheapest basket, or why there is none. */
export function BasketTable({ buy, comparison }: Props) {
  const words = useQuotesText();
  const { format } = useHouse();
  const { basket, basketAbsent } = comparison;
  const nameOf = (lineId: string) => {
    const line = buy.lines.find(({ id }) => id === lineId);
    return line ? foodNameOf(line, format.language) : '';
  };
  if (!basket) return <p>{words.basketAbsent[basketAbsent ?? '']}</p>;
  return (
    <>
      <Ledger
        caption={words.basket}
        columns={[
          { name: words.supplier },
          { name: words.foods },
          { name: words.goods, isNumber: true },
          { name: words.freight, isNumber: true },
        ]}
        rows={[
          ...basket.quotes.map((order) => ({
            key: order.quoteId,
            cells: [
              order.supplier,
              basket.lines
                .filter(({ quoteId }) => quoteId === order.quoteId)
                .map(({ buyLineId }) => nameOf(buyLineId))
                .join(', '),
              format.money(order.goodsMinorUnits),
              format.money(order.freightMinorUnits),
            ],
          })),
          {
            key: 'sum',
            isSum: true,
            cells: [words.basketTotal, '', format.money(basket.totalMinorUnits), ''],
          },
        ]}
      />
      <p className="soft">{words.basketTried(basket.assignmentsTried)}</p>
    </>
  );
}
