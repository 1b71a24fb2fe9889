-- Holds of more than one bag: a lot, chosen containers, what a line closed in a session, a delivery, a supplier's mark, or a
-- food of some days. What a hold reaches is written down vessel by vessel, and nothing held moves.
alter table book.hold
  alter column bag_id drop not null,
  add column scope text not null default 'bag',
  add column lot_id uuid,
  add column packing_session_id uuid,
  add column line smallint,
  add column from_serial integer,
  add column to_serial integer,
  add column delivery_id uuid,
  add column supplier_id uuid,
  add column supplier_mark text,
  add column food_id uuid,
  add column from_on date, -- bags that arrived, and containers that were packed, on these days
  add column to_on date,
  add constraint hold_lot_fk foreign key (storehouse_id, lot_id) references book.lot,
  add constraint hold_session_fk foreign key (storehouse_id, packing_session_id) references book.packing_session,
  add constraint hold_delivery_fk foreign key (storehouse_id, delivery_id) references book.delivery,
  add constraint hold_supplier_fk foreign key (storehouse_id, supplier_id) references book.supplier,
  add constraint hold_food_fk foreign key (storehouse_id, food_id) references book.food,
  add constraint hold_scope_known check (scope in ('bag', 'lot', 'containers', 'session', 'delivery', 'mark', 'food')),
  add constraint hold_scope_fits check ((scope = 'bag') = (bag_id is not null) and (scope = 'lot') = (lot_id is not null)
    and (scope = 'session') = (packing_session_id is not null) and (scope = 'delivery') = (delivery_id is not null)
    and (scope = 'mark') = (supplier_id is not null) and (scope = 'mark') = (supplier_mark is not null)
    and (scope = 'food') = (food_id is not null) and (scope = 'food') = (from_on is not null)
    and (from_on is null) = (to_on is null) and from_on <= to_on),
  add constraint hold_window_fits check ((line is null or scope = 'session')
    and (from_serial is null) = (to_serial is null) and (from_serial is null or line is not null)
    and from_serial between 1 and to_serial);
create index hold_open on book.hold (storehouse_id) where released_at is null;

-- A bag or container that a hold reached. It stays held until the hold ends, or it is empty and thrown away.
create table book.hold_vessel (
  storehouse_id uuid not null,
  hold_id uuid not null,
  vessel_id uuid not null,
  reached_at timestamptz not null,
  ended_at timestamptz,
  primary key (storehouse_id, hold_id, vessel_id),
  constraint hold_vessel_hold_fk foreign key (storehouse_id, hold_id) references book.hold,
  constraint hold_vessel_vessel_fk foreign key (storehouse_id, vessel_id) references book.vessel,
  constraint hold_vessel_runs_forward check (reached_at <= ended_at)
);
create index hold_vessel_standing on book.hold_vessel (storehouse_id, vessel_id) where ended_at is null;
select book.keep_in_storehouse('book.hold_vessel');
grant select, insert on book.hold_vessel to sheafbook_app;
grant update (ended_at) on book.hold_vessel to sheafbook_app;
insert into book.hold_vessel (storehouse_id, hold_id, vessel_id, reached_at, ended_at)
  select storehouse_id, hold_id, bag_id, held_at, greatest(held_at, released_at) from book.hold;

-- Everything that may not move, and why: on hold, or with a seam or seal in doubt.
create view book.held with (security_invoker = true) as
  select v.storehouse_id, v.vessel_id, v.hold_id, h.reason
    from book.hold_vessel v join book.hold h on h.storehouse_id = v.storehouse_id and h.hold_id = v.hold_id
    where v.ended_at is null
  union all
  select s.storehouse_id, s.container_id, null, null from book.seal_hold s where s.disposition is null;
grant select on book.held to sheafbook_app, sheafbook_poster;
grant select on book.hold, book.hold_vessel, book.seal_hold to sheafbook_poster;

/*
 * The bags and containers that a hold's scope names, and what was poured out of those. A pour that was undone carried
 * nothing. Chosen containers are named by their rows in hold_vessel.
 */
create function book.list_reach(p_storehouse uuid, p_hold uuid) returns table (vessel_id uuid)
  language sql stable parallel safe set search_path = pg_catalog, pg_temp
  begin atomic
    with recursive h as (select * from book.hold where storehouse_id = p_storehouse and hold_id = p_hold),
    named as (
      select b.bag_id as vessel_id from h
        join book.bag b on b.storehouse_id = h.storehouse_id
        join book.lot l on l.storehouse_id = b.storehouse_id and l.lot_id = b.lot_id
        join book.delivery d on d.storehouse_id = b.storehouse_id and d.delivery_id = b.delivery_id
        where b.decision <> 'refused' and (b.bag_id = h.bag_id or b.lot_id = h.lot_id or b.delivery_id = h.delivery_id
          or (l.supplier_id = h.supplier_id and l.supplier_mark = h.supplier_mark)
          or (l.food_id = h.food_id and d.arrived_on between h.from_on and h.to_on))
      union
      select c.container_id from h
        join book.container c on c.storehouse_id = h.storehouse_id
        join book.lot l on l.storehouse_id = c.storehouse_id and l.lot_id = c.lot_id
        where c.lot_id = h.lot_id or (l.supplier_id = h.supplier_id and l.supplier_mark = h.supplier_mark)
          or (l.food_id = h.food_id and c.packed_on between h.from_on and h.to_on)
      union
      select p.container_id from h
        join book.packing_pour p on p.storehouse_id = h.storehouse_id and p.packing_session_id = h.packing_session_id
        where p.undone_entry_id is null and (h.line is null or p.line = h.line)
          and (h.from_serial is null or p.serial between h.from_serial and h.to_serial)
      union
      select v.vessel_id from h join book.hold_vessel v on v.storehouse_id = h.storehouse_id and v.hold_id = h.hold_id
        where h.scope = 'containers'),
    reached as (
      select n.vessel_id from named n
      union
      select d.vessel_id from reached r
        join book.account s on s.storehouse_id = p_storehouse and s.vessel_id = r.vessel_id
        join book.movement m on m.storehouse_id = p_storehouse and m.source_id = s.account_id
        join book.entry e on e.storehouse_id = p_storehouse and e.entry_id = m.entry_id and e.reverses_id is null
        join book.account d on d.storehouse_id = p_storehouse and d.account_id = m.destination_id
        where d.vessel_kind in ('bag', 'container') and d.vessel_id <> s.vessel_id
          and not exists (select from book.entry u where u.storehouse_id = p_storehouse and u.reverses_id = e.entry_id))
    select r.vessel_id from reached r;
  end;
revoke execute on function book.list_reach from public;
grant execute on function book.list_reach to sheafbook_app;

/*
 * What comes to be in the scope of a standing hold is held with it: a bag that lands, a container that is filled. An archive
 * that is brought in stands in no storehouse's transaction and brings its own rows.
 */
create function book.extend_holds() returns trigger language plpgsql set search_path = pg_catalog, pg_temp as $$
begin
  insert into book.hold_vessel (storehouse_id, hold_id, vessel_id, reached_at)
    select h.storehouse_id, h.hold_id, r.vessel_id, greatest(h.held_at, e.recorded_at)
    from book.hold h cross join lateral book.list_reach(h.storehouse_id, h.hold_id) r
    left join book.book_state b on b.storehouse_id = h.storehouse_id
    left join book.entry e on e.storehouse_id = b.storehouse_id and e.entry_no = b.last_entry_no -- what filled it came before
    where h.storehouse_id = book.current_storehouse() and h.released_at is null and h.scope not in ('bag', 'containers')
    on conflict do nothing;
  return null;
end $$;
create trigger bag_joins_holds after insert on book.bag for each statement execute function book.extend_holds();
create trigger container_joins_holds after insert on book.container for each statement execute function book.extend_holds();
create trigger packing_pour_joins_holds after insert on book.packing_pour
  for each statement execute function book.extend_holds();

-- The poster owns the function, so only it may put another in its place.
set local role sheafbook_poster;
/*
 * Posts one entry. The tenant comes from the transaction's setting, never from a parameter, and the totals come from
 * the movements themselves, so that no caller can raise a balance without one. Lock order: the book's own row, then
 * the accounts by id; two posts can therefore not deadlock. Whoever begins a hold locks the book too, so nothing of what is
 * held gets past. What is held may go back, be thrown away, tested, spilled or weighed again, and undoing an entry takes
 * food nowhere new.
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
  if p_reverses is null and exists (
    select from unnest(p_sources, p_destinations) m (source_id, destination_id)
    join book.account f on f.storehouse_id = s and f.account_id = m.source_id and f.kind = 'mass'
    join book.account t on t.storehouse_id = s and t.account_id = m.destination_id
    join book.held v on v.storehouse_id = s and v.vessel_id in (f.vessel_id, t.vessel_id)
    where not (array[f.vessel_kind, t.vessel_kind] && array['supplier', 'discarded', 'sampled', 'spilled', 'unexplained']))
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
  return query select new_id, new_no;
end $$;
set local role sheafbook_owner;
