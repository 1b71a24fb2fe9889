-- A container that was eaten empty in a held place stood outside the hold, and what was poured into it there stayed free.
grant insert on book.hold_vessel to sheafbook_poster;
grant select on book.container, book.container_move, book.container_place, book.lot to sheafbook_poster;

/*
 * Of some accounts that something came into: each container that stands in a held place, or is of a held food and day, joins
 * its hold, also where it had left it empty. It runs inside the entry that fills, which has the book: a hold that is being
 * written down either sees what came in, or is seen here. It opens the moves for itself alone.
 */
create function book.hold_what_is_filled(p_accounts uuid[], p_at timestamptz) returns void language plpgsql
  set search_path = pg_catalog, pg_temp as $$
declare
  s uuid := book.current_storehouse();
  task_before text := coalesce(current_setting('app.task', true), '');
begin
  perform set_config('app.task', 'hold', true);
  insert into book.hold_vessel as v (storehouse_id, hold_id, vessel_id, reached_at)
    select distinct s, h.hold_id, c.container_id, greatest(h.held_at, p_at)
    from book.account a
    join book.container c on c.storehouse_id = s and c.container_id = a.vessel_id
    join book.lot l on l.storehouse_id = s and l.lot_id = c.lot_id
    join book.hold h on h.storehouse_id = s and h.released_at is null
    where a.storehouse_id = s and a.account_id = any(p_accounts) and a.vessel_kind = 'container'
      and (h.scope = 'food' and h.food_id = l.food_id and c.packed_on between h.from_on and h.to_on
        or h.scope = 'place' and exists (select from book.container_place p
          where p.storehouse_id = s and p.container_id = c.container_id and p.place_id = h.place_id))
    on conflict (storehouse_id, hold_id, vessel_id) do update set ended_at = null where v.ended_at is not null;
  perform set_config('app.task', task_before, true);
end $$;
revoke execute on function book.hold_what_is_filled from public;
grant execute on function book.hold_what_is_filled to sheafbook_poster;

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
    where not (array[f.vessel_kind, t.vessel_kind] && array['supplier', 'discarded', 'sampled', 'spilled', 'unexplained'])
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
