import type { TestApp } from './app.ts';

/**
 * Everything that a refused command must leave as it was: each account's totals, the number of entries, and the rows
 * of buys, lines, quotes, offers, pledges and ceilings. Two of these texts are equal when the books are.
 */
export async function booksOf(app: TestApp): Promise<string> {
  const [row] = await app.admin<{ books: string }[]>`select jsonb_build_object(
    'accounts', (select jsonb_agg(jsonb_build_array(account_id, inflow, outflow, closed) order by account_id)
      from book.account),
    'entries', (select count(*) from book.entry),
    'suppliers', (select jsonb_agg(to_jsonb(t) order by t.supplier_id) from book.supplier t),
    'foods', (select jsonb_agg(to_jsonb(t) order by t.food_id) from book.food t),
    'buys', (select jsonb_agg(to_jsonb(t) order by t.buy_id) from book.buy t),
    'stage_moves', (select count(*) from book.stage_move),
    'lines', (select jsonb_agg(to_jsonb(t) order by t.buy_line_id) from book.buy_line t),
    'quotes', (select jsonb_agg(to_jsonb(t) order by t.quote_id) from book.quote t),
    'freight', (select jsonb_agg(to_jsonb(t) order by t.quote_id, t.from_grams) from book.quote_freight_step t),
    'offers', (select jsonb_agg(to_jsonb(t) order by t.bag_offer_id) from book.bag_offer t),
    'breaks', (select jsonb_agg(to_jsonb(t) order by t.bag_offer_id, t.from_bags) from book.price_break t),
    'pledges', (select jsonb_agg(to_jsonb(t) order by t.pledge_id) from book.pledge t),
    'ceilings', (select jsonb_agg(to_jsonb(t) order by t.pledge_id) from book.pledge_ceiling t),
    'orders', (select jsonb_agg(to_jsonb(t) order by t.supplier_order_id) from book.supplier_order t))::text as books`;
  return row?.books ?? '';
}
