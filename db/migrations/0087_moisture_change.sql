-- Grain dries or grows damp where it stands (job map 6): what two moisture readings explain of a second weighing goes to or comes
-- from a vessel of its own, so that it is no unexplained loss. As the unexplained it may stand on either side of nothing.
alter table book.vessel drop constraint vessel_kind_known;
alter table book.vessel add constraint vessel_kind_known check (kind in ('bag', 'container', 'kitchen', 'supplier', 'eaten',
  'given', 'animals', 'composted', 'spilled', 'sampled', 'discarded', 'transformed', 'unexplained', 'moisture'));
alter table book.account drop constraint account_guard_fits_kind;
alter table book.account add constraint account_guard_fits_kind check (guard = case
  when kind in ('buy_deposit', 'loan_deposit') or vessel_kind = 'supplier' then 'not_above'
  when kind = 'pieces' and owner_id is null then 'none'
  when kind in ('cash_tin', 'supplier_claim', 'supplies', 'common_stock', 'equipment', 'pieces') then 'not_below'
  when vessel_kind in ('transformed', 'unexplained', 'moisture') then 'none'
  when kind = 'mass' then 'not_below'
  else 'none' end);
insert into book.vessel (storehouse_id, kind) select storehouse_id, 'moisture' from book.storehouse;

-- The two readings behind a movement by moisture, in tenths of a per cent, and what was booked and weighed. Only added to.
create table book.moisture_change (
  storehouse_id uuid not null,
  entry_id uuid not null,
  bag_id uuid not null,
  was_tenths integer not null,
  is_tenths integer not null,
  booked_grams book.amount not null,
  weighed_grams book.amount not null,
  primary key (storehouse_id, entry_id),
  constraint moisture_change_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint moisture_change_bag_fk foreign key (storehouse_id, bag_id) references book.bag,
  constraint moisture_change_is_of_grain check (was_tenths between 0 and 500 and is_tenths between 0 and 500),
  constraint moisture_change_changes_weight check (booked_grams <> weighed_grams)
);
create index moisture_change_by_bag on book.moisture_change (storehouse_id, bag_id);
select book.keep_in_storehouse('book.moisture_change');
grant select, insert on book.moisture_change to sheafbook_app;

-- What was measured when the rest of a bag was weighed back at a packing day; booked when its mass is signed.
alter table book.packing_bag
  add column was_tenths integer,
  add column is_tenths integer,
  add constraint packing_bag_moisture_whole check (num_nonnulls(was_tenths, is_tenths) in (0, 2)),
  add constraint packing_bag_moisture_of_grain check (was_tenths between 0 and 500 and is_tenths between 0 and 500);
grant update (was_tenths, is_tenths) on book.packing_bag to sheafbook_app;

set local role sheafbook_poster;
/*
 * Posts one entry. The tenant comes from the transaction's setting, never from a parameter, and the totals come from
 * the movements themselves, so that no caller can raise a balance without one. Lock order: the book's own row, then
 * the accounts by id; two posts can therefore not deadlock. Whoever begins a hold locks the book too, so nothing of what is
 * held gets past. What is held may go back, be thrown away, tested, spilled or weighed again. Undoing an entry may put food
 * into what is held, and take none out of it into what is not. A receipt tells what was handed over before the hold. What
 * is filled where a hold reaches is on hold from then on.
 */
create or replace function book.post_entry(
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
  if exists (
    select from unnest(p_sources, p_destinations) m (source_id, destination_id)
    join book.account f on f.storehouse_id = s and f.account_id = m.source_id and f.kind = 'mass'
    join book.account t on t.storehouse_id = s and t.account_id = m.destination_id
    where not (array[f.vessel_kind, t.vessel_kind] && array['supplier', 'discarded', 'sampled', 'spilled', 'moisture',
        'unexplained'])
      and (exists (select from book.held v where v.storehouse_id = s and v.vessel_id in (f.vessel_id, t.vessel_id))
        or f.vessel_kind = 'kitchen' and exists (select from book.held_in_kitchen k
          where k.storehouse_id = s and k.household_id = f.vessel_id and k.lot_id = f.unit_id))
      and (p_reverses is null or not exists (
        select from book.held w where w.storehouse_id = s and w.vessel_id = t.vessel_id))
      and not (p_what = 'gift-received' and t.vessel_kind = 'given' and exists (select from book.gift_line i
        where i.storehouse_id = s and i.container_id = f.vessel_id and i.is_open)))
  then
    raise exception 'something in this entry is on hold' using errcode = 'check_violation', constraint = 'nothing_held_moves';
  end if;
  insert into book.entry (storehouse_id, entry_id, entry_no, what, on_day, recorded_at, person_id, entered_for, buy_id,
    subject_id, reverses_id, note)
  values (s, new_id, new_no, p_what, p_on_day, p_recorded_at, p_person, p_entered_for, p_buy, p_subject, p_reverses, p_note);
  insert into book.movement (storehouse_id, entry_id, line, unit_id, source_id, destination_id, amount)
  select s, new_id, m.line, m.unit_id, m.source_id, m.destination_id, m.amount
  from unnest(p_units, p_sources, p_destinations, p_amounts)
    with ordinality m (unit_id, source_id, destination_id, amount, line);
  if p_reverses is not null then
    with back as (
      update book.hold_vessel v set ended_at = null
      from unnest(p_sources, p_destinations) m (source_id, destination_id)
      join book.account f on f.storehouse_id = s and f.account_id = m.source_id and f.vessel_kind in ('discarded', 'supplier')
      join book.account t on t.storehouse_id = s and t.account_id = m.destination_id
      join book.hold h on h.storehouse_id = s and h.released_by is null
      where v.storehouse_id = s and v.vessel_id = t.vessel_id and v.hold_id = h.hold_id and v.ended_at is not null
        and not exists (select from book.hold o where o.storehouse_id = s and o.bag_id = h.bag_id
          and o.hold_id <> h.hold_id and o.released_at is null)
      returning v.hold_id)
    update book.hold h set released_at = null, release_asked_by = null, finding = ''
      where h.storehouse_id = s and h.released_at is not null and h.hold_id in (select b.hold_id from back b);
  end if;
  if exists (select from book.hold h where h.storehouse_id = s and h.released_at is null and h.scope in ('place', 'food')) then
    perform book.hold_what_is_filled(p_destinations, p_recorded_at);
  end if;
  return query select new_id, new_no;
end $$;
set local role sheafbook_owner;
