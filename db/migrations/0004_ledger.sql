-- One ledger for money, mass and pieces: everything with a quantity is an account, everything that happens a movement.
create table book.book_state (
  storehouse_id uuid not null references book.storehouse,
  last_entry_no bigint not null default 0,
  closed_through date,
  primary key (storehouse_id)
);
select book.keep_in_storehouse('book.book_state');
grant select on book.book_state to sheafbook_app, sheafbook_poster;
grant insert (storehouse_id) on book.book_state to sheafbook_app;
grant update (last_entry_no, closed_through) on book.book_state to sheafbook_poster;

create table book.unit (
  storehouse_id uuid not null references book.storehouse,
  unit_id uuid not null default uuidv7(),
  kind text not null,
  currency char(3),
  primary key (storehouse_id, unit_id),
  constraint unit_kind_known check (kind in ('currency', 'lot', 'supply')),
  constraint unit_currency_named check ((kind = 'currency') = (currency is not null)),
  constraint unit_id_and_kind unique (storehouse_id, unit_id, kind)
);
-- One currency per storehouse, for good (ledger-notes 6.13).
create unique index unit_one_currency on book.unit (storehouse_id) where kind = 'currency';
select book.keep_in_storehouse('book.unit');
grant select, insert on book.unit to sheafbook_app;
grant select on book.unit to sheafbook_poster;

-- A vessel holds grams: a numbered bag, a container, or one of the places outside the store's keeping.
create table book.vessel (
  storehouse_id uuid not null references book.storehouse,
  vessel_id uuid not null default uuidv7(),
  kind text not null,
  primary key (storehouse_id, vessel_id),
  constraint vessel_kind_known check (kind in ('bag', 'container', 'supplier', 'eaten', 'given', 'animals', 'composted',
    'spilled', 'sampled', 'discarded', 'transformed', 'unexplained')),
  constraint vessel_id_and_kind unique (storehouse_id, vessel_id, kind)
);
create unique index vessel_outside_once on book.vessel (storehouse_id, kind) where kind not in ('bag', 'container');
select book.keep_in_storehouse('book.vessel');
grant select, insert on book.vessel to sheafbook_app;

create table book.account (
  storehouse_id uuid not null,
  account_id uuid not null default uuidv7(),
  unit_id uuid not null,
  unit_kind text not null,
  kind text not null,
  vessel_id uuid,
  vessel_kind text,
  owner_id uuid,
  cause_id uuid,
  guard text not null,
  closed boolean not null default false,
  inflow book.amount not null default 0,
  outflow book.amount not null default 0,
  primary key (storehouse_id, account_id),
  constraint account_unit_fk foreign key (storehouse_id, unit_id, unit_kind)
    references book.unit (storehouse_id, unit_id, kind),
  constraint account_vessel_fk foreign key (storehouse_id, vessel_id, vessel_kind)
    references book.vessel (storehouse_id, vessel_id, kind),
  constraint account_owner_fk foreign key (storehouse_id, owner_id) references book.owner,
  constraint account_id_and_unit unique (storehouse_id, account_id, unit_id),
  constraint account_once unique nulls not distinct (storehouse_id, unit_id, kind, vessel_id, owner_id, cause_id),
  constraint account_kind_known check (kind in ('bank', 'cash_tin', 'household', 'supplier_claim', 'supplies',
    'common_stock', 'equipment', 'supplier', 'buy_deposit', 'loan_deposit', 'buy_clearing', 'session_clearing',
    'store_fund', 'given_value', 'line_fees', 'equipment_fees', 'cash_gifts', 'losses', 'bank_charges', 'repairs',
    'debt_written_off', 'mass', 'pieces')),
  constraint account_unit_fits_kind check (unit_kind = case kind when 'mass' then 'lot' when 'pieces' then 'supply'
    else 'currency' end),
  constraint account_vessel_fits_kind check ((kind = 'mass') = (vessel_id is not null)
    and (vessel_id is null) = (vessel_kind is null)),
  constraint account_owner_fits_kind check (owner_id is not null or kind not in
    ('household', 'supplier', 'supplier_claim', 'buy_deposit', 'loan_deposit', 'mass')),
  constraint account_cause_fits_kind check (cause_id is not null or kind not in
    ('supplier_claim', 'buy_deposit', 'loan_deposit', 'buy_clearing', 'session_clearing', 'common_stock')),
  -- The guard follows from the kind, so that no caller can choose a looser one (ledger-notes 6.1).
  constraint account_guard_fits_kind check (guard = case
    when kind in ('buy_deposit', 'loan_deposit') or vessel_kind = 'supplier' then 'not_above'
    when kind in ('cash_tin', 'supplier_claim', 'supplies', 'common_stock', 'equipment', 'pieces') then 'not_below'
    when vessel_kind in ('transformed', 'unexplained') then 'none'
    when kind = 'mass' then 'not_below'
    else 'none' end),
  constraint account_never_below_zero check (guard <> 'not_below' or inflow >= outflow),
  constraint account_never_above_zero check (guard <> 'not_above' or inflow <= outflow),
  constraint account_closed_at_zero check (not closed or inflow = outflow)
) with (fillfactor = 60); -- inflow and outflow are never indexed, or HOT updates are lost
create index account_by_owner on book.account (storehouse_id, owner_id);
create index account_by_cause on book.account (storehouse_id, cause_id) where cause_id is not null;
create index account_by_vessel on book.account (storehouse_id, vessel_id) where vessel_id is not null;
select book.keep_in_storehouse('book.account');
grant select on book.account to sheafbook_app, sheafbook_poster;
grant insert (storehouse_id, account_id, unit_id, unit_kind, kind, vessel_id, vessel_kind, owner_id, cause_id, guard)
  on book.account to sheafbook_app;
grant update (inflow, outflow, closed) on book.account to sheafbook_poster;

create table book.entry (
  storehouse_id uuid not null references book.storehouse,
  entry_id uuid not null default uuidv7(),
  entry_no bigint not null, -- in commit order, unlike uuidv7 (ledger-notes 6.6)
  what text not null,
  on_day date not null,
  recorded_at timestamptz not null,
  person_id uuid not null,
  entered_for uuid, -- the household a helper acted for
  buy_id uuid,
  subject_id uuid, -- the bag, claim, container or invoice that the entry is about
  reverses_id uuid,
  note text not null default '',
  primary key (storehouse_id, entry_id),
  constraint entry_no_once unique (storehouse_id, entry_no),
  constraint entry_person_fk foreign key (storehouse_id, person_id) references book.person,
  constraint entry_entered_for_fk foreign key (storehouse_id, entered_for) references book.household,
  constraint entry_reverses_fk foreign key (storehouse_id, reverses_id) references book.entry
    deferrable, -- an import may bring the later entry first
  constraint entry_reversed_once unique (storehouse_id, reverses_id),
  constraint entry_named check (what ~ '^[a-z][a-z-]*$')
);
create index entry_by_buy on book.entry (storehouse_id, buy_id, entry_no) where buy_id is not null;
create index entry_by_subject on book.entry (storehouse_id, subject_id) where subject_id is not null;
select book.keep_in_storehouse('book.entry');

create table book.movement (
  storehouse_id uuid not null,
  entry_id uuid not null,
  line smallint not null,
  unit_id uuid not null,
  source_id uuid not null,
  destination_id uuid not null,
  amount bigint not null,
  primary key (storehouse_id, entry_id, line),
  constraint movement_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint movement_source_fk foreign key (storehouse_id, source_id, unit_id)
    references book.account (storehouse_id, account_id, unit_id),
  constraint movement_destination_fk foreign key (storehouse_id, destination_id, unit_id)
    references book.account (storehouse_id, account_id, unit_id),
  constraint movement_amount_positive check (amount > 0 and amount <= 9007199254740991),
  constraint movement_goes_somewhere check (source_id <> destination_id)
);
create index movement_by_source on book.movement (storehouse_id, source_id, entry_id desc);
create index movement_by_destination on book.movement (storehouse_id, destination_id, entry_id desc);
select book.keep_in_storehouse('book.movement');
-- Append-only: nobody but the poster inserts, nobody updates or deletes (ledger-notes 2c, 2g).
grant select on book.entry, book.movement to sheafbook_app, sheafbook_poster;
grant insert on book.entry, book.movement to sheafbook_poster;

-- Rights are given before a function changes hands: its first owner has none over it afterwards.
/*
 * Posts one entry. The tenant comes from the transaction's setting, never from a parameter, and the totals come from
 * the movements themselves, so that no caller can raise a balance without one. Lock order: the book's own row, then
 * the accounts by id; two posts can therefore not deadlock.
 */
create function book.post_entry(
  p_what text, p_on_day date, p_recorded_at timestamptz, p_person uuid, p_entered_for uuid, p_buy uuid, p_subject uuid,
  p_reverses uuid, p_note text, p_units uuid[], p_sources uuid[], p_destinations uuid[], p_amounts bigint[]
) returns table (entry_id uuid, entry_no bigint) language plpgsql security definer
  set search_path = pg_catalog, pg_temp as $$
#variable_conflict use_column
declare
  s uuid := book.current_storehouse();
  new_id uuid := uuidv7();
  new_no bigint;
  closed_day date;
  wanted integer;
  found integer;
begin
  if cardinality(p_amounts) is null or cardinality(p_amounts) = 0 then
    raise exception 'an entry needs a movement' using errcode = 'check_violation', constraint = 'entry_has_movements';
  end if;
  update book.book_state b set last_entry_no = b.last_entry_no + 1 where b.storehouse_id = s
    returning b.last_entry_no, b.closed_through into new_no, closed_day;
  if new_no is null then
    raise exception 'no book is open here' using errcode = 'check_violation', constraint = 'entry_has_a_book';
  end if;
  if p_on_day <= closed_day then
    raise exception 'the books are closed through %', closed_day
      using errcode = 'check_violation', constraint = 'entry_in_open_period';
  end if;
  with t as materialized (
    select account_id, sum(i)::bigint as i, sum(o)::bigint as o from (
      select unnest(p_destinations) as account_id, unnest(p_amounts) as i, 0::bigint as o
      union all select unnest(p_sources), 0::bigint, unnest(p_amounts)) sides
    group by account_id),
  l as materialized (
    select a.account_id from book.account a
    where a.storehouse_id = s and a.account_id in (select account_id from t)
    order by a.account_id for no key update), -- the fixed lock order
  up as (
    update book.account a set inflow = a.inflow + t.i, outflow = a.outflow + t.o
    from t join l on l.account_id = t.account_id -- the join to l makes the order hold under any plan
    where a.storehouse_id = s and a.account_id = t.account_id returning 1)
  select (select count(*) from t), (select count(*) from up) into wanted, found;
  if wanted <> found then
    raise exception 'an account of this entry is not in this storehouse'
      using errcode = 'foreign_key_violation', constraint = 'movement_source_fk';
  end if;
  insert into book.entry (storehouse_id, entry_id, entry_no, what, on_day, recorded_at, person_id, entered_for, buy_id,
    subject_id, reverses_id, note)
  values (s, new_id, new_no, p_what, p_on_day, p_recorded_at, p_person, p_entered_for, p_buy, p_subject, p_reverses, p_note);
  insert into book.movement (storehouse_id, entry_id, line, unit_id, source_id, destination_id, amount)
  select s, new_id, m.line, m.unit_id, m.source_id, m.destination_id, m.amount
  from unnest(p_units, p_sources, p_destinations, p_amounts)
    with ordinality m (unit_id, source_id, destination_id, amount, line);
  return query select new_id, new_no;
end $$;
revoke execute on function book.post_entry from public;
grant execute on function book.post_entry to sheafbook_app;
alter function book.post_entry owner to sheafbook_poster;

-- Closes a clearing account for good: from here its check holds it at zero after every entry (ledger-notes 6.2).
create function book.close_account(p_account uuid) returns boolean language sql security definer
  set search_path = pg_catalog, pg_temp
  begin atomic
    update book.account set closed = true where storehouse_id = book.current_storehouse() and account_id = p_account
      and kind in ('buy_clearing', 'session_clearing', 'buy_deposit')
    returning closed;
  end;
revoke execute on function book.close_account from public;
grant execute on function book.close_account to sheafbook_app;
alter function book.close_account owner to sheafbook_poster;

-- Holds off every posting until this transaction ends: for a command that must find balances settled and keep them so.
create function book.lock_book() returns bigint language sql security definer set search_path = pg_catalog, pg_temp
  begin atomic
    select last_entry_no from book.book_state where storehouse_id = book.current_storehouse() for no key update;
  end;
revoke execute on function book.lock_book from public;
grant execute on function book.lock_book to sheafbook_app;
alter function book.lock_book owner to sheafbook_poster;

-- Closes the books through a day; never opens them again (ledger-notes 6.5).
create function book.close_period(p_through date) returns date language sql security definer
  set search_path = pg_catalog, pg_temp
  begin atomic
    update book.book_state set closed_through = p_through
    where storehouse_id = book.current_storehouse() and (closed_through is null or closed_through < p_through)
    returning closed_through;
  end;
revoke execute on function book.close_period from public;
grant execute on function book.close_period to sheafbook_app;
alter function book.close_period owner to sheafbook_poster;
