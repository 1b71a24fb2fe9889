import type { Answer, TestApp } from './app.ts';

/** Everything that landing, holding, claiming and billing could have changed. */
async function landingBooksOf(app: TestApp): Promise<string> {
  const [row] = await app.admin<{ books: string }[]>`select jsonb_build_object(
    'accounts', (select jsonb_agg(jsonb_build_array(account_id, inflow, outflow, closed) order by account_id)
      from book.account),
    'entries', (select jsonb_agg(to_jsonb(t) order by t.entry_no) from book.entry t),
    'movements', (select count(*) from book.movement),
    'buys', (select jsonb_agg(to_jsonb(t) order by t.buy_id) from book.buy t),
    'deliveries', (select jsonb_agg(to_jsonb(t) order by t.delivery_id) from book.delivery t),
    'counts', (select jsonb_agg(to_jsonb(t) order by t.delivery_id, t.bag_offer_id) from book.delivery_count t),
    'bags', (select jsonb_agg(to_jsonb(t) order by t.bag_id) from book.bag t),
    'lots', (select jsonb_agg(to_jsonb(t) order by t.lot_id) from book.lot t),
    'vessels', (select count(*) from book.vessel),
    'units', (select count(*) from book.unit),
    'numbers', (select jsonb_agg(to_jsonb(t) order by t.storehouse_id, t.counter) from book.code_counter t),
    'holds', (select jsonb_agg(to_jsonb(t) order by t.hold_id) from book.hold t),
    'claims', (select jsonb_agg(to_jsonb(t) order by t.claim_id) from book.claim t),
    'invoices', (select jsonb_agg(to_jsonb(t) order by t.invoice_id) from book.invoice t),
    'invoice_lines', (select count(*) from book.invoice_line),
    'kept_answers', (select count(*) from book.kept_answer))::text as books`;
  return row?.books ?? '';
}

/** How a call was refused, by which fields, and whether the books are as they were before it. */
export async function refusalOf(app: TestApp, call: () => Promise<Answer>) {
  const before = await landingBooksOf(app);
  const { status, body } = await call();
  const named: string[] = (body.fields ?? []).map((problem: { field: string }) => problem.field);
  const fields = [...new Set(named)]; // one value can break two rules
  return { status, code: body.code, fields, isUnchanged: (await landingBooksOf(app)) === before };
}

export const refused = (status: number, code: string, ...fields: readonly string[]) => ({
  status,
  code,
  fields,
  isUnchanged: true,
});

/** Grams in a vessel kind of a lot's food, over all owners: what the supplier sent counts below zero. */
export async function gramsIn(app: TestApp, buyLineId: string, vesselKind: string): Promise<number> {
  const [row] = await app.admin<{ grams: string }[]>`
    select coalesce(sum(a.inflow - a.outflow), 0) as grams from book.account a
    join book.lot l on l.storehouse_id = a.storehouse_id and l.lot_id = a.unit_id
    where l.buy_line_id = ${buyLineId} and a.vessel_kind = ${vesselKind}`;
  return Number(row?.grams ?? 0);
}

/** What stands on a buy's clearing account, in minor units: costs above zero. */
export async function clearingOf(app: TestApp, buyId: string): Promise<number> {
  return balanceOfKind(app, { kind: 'buy_clearing', causeId: buyId });
}

export async function balanceOfKind(
  app: TestApp,
  account: { kind: string; causeId?: string; ownerId?: string },
): Promise<number> {
  const { kind, causeId = null, ownerId = null } = account;
  const [row] = await app.admin<{ balance: string }[]>`
    select coalesce(sum(inflow - outflow), 0) as balance from book.account
    where kind = ${kind} and (${causeId}::uuid is null or cause_id = ${causeId}::uuid)
      and (${ownerId}::uuid is null or owner_id = ${ownerId}::uuid)`;
  return Number(row?.balance ?? 0);
}
