-- A hold of all that stands in one place of the store's; and no hold is missed by what was being written down as it began.
alter table book.hold drop constraint hold_scope_known, drop constraint hold_scope_fits;
alter table book.hold
  add column place_id uuid,
  add constraint hold_place_fk foreign key (storehouse_id, place_id) references book.place,
  add constraint hold_scope_known
    check (scope in ('bag', 'lot', 'containers', 'session', 'delivery', 'mark', 'food', 'place')),
  add constraint hold_scope_fits check ((scope = 'bag') = (bag_id is not null) and (scope = 'lot') = (lot_id is not null)
    and (scope = 'session') = (packing_session_id is not null) and (scope = 'delivery') = (delivery_id is not null)
    and (scope = 'mark') = (supplier_id is not null) and (scope = 'mark') = (supplier_mark is not null)
    and (scope = 'food') = (food_id is not null) and (scope = 'food') = (from_on is not null)
    and (scope = 'place') = (place_id is not null) and (from_on is null) = (to_on is null) and from_on <= to_on);

-- Where each container stands now, by its last move; nobody has said that of one without a move.
create view book.container_place with (security_invoker = true) as
  select m.storehouse_id, m.container_id, m.place_id from book.container_move m
  where not exists (select from book.container_move l where l.storehouse_id = m.storehouse_id
    and l.container_id = m.container_id
    and (l.moved_on, l.moved_at, l.container_move_id) > (m.moved_on, m.moved_at, m.container_move_id));
grant select on book.container_place to sheafbook_app;

-- Whoever holds a place of the store's reaches what households have in it. It reads all moves, or what has left the place since
-- would still stand in it; the places of households themselves stay hidden.
drop policy container_move_private on book.container_move;
create policy container_move_private on book.container_move as restrictive for all
  using ((storehouse_id, container_id) in (select c.storehouse_id, c.container_id from book.container c
    where c.household_id is null or c.household_id = (select book.current_household())
      or (select book.current_task()) in ('coverage-totals', 'need-first', 'hold')));

/*
 * The bags and containers that a hold's scope names, and what was poured out of those. A pour that was undone carried
 * nothing, and a can that was filled anew was closed by its line like any other. Chosen containers are named by their rows in
 * hold_vessel. In a place stands what is not emptied, and what was just set there to be filled.
 */
create or replace function book.list_reach(p_storehouse uuid, p_hold uuid) returns table (vessel_id uuid)
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
        join book.line_closed p on p.storehouse_id = h.storehouse_id and p.packing_session_id = h.packing_session_id
        where p.undone_entry_id is null and (h.line is null or p.line = h.line)
          and (h.from_serial is null or p.serial between h.from_serial and h.to_serial)
      union
      select s.container_id from h
        join book.container_place s on s.storehouse_id = h.storehouse_id and s.place_id = h.place_id
        where exists (select from book.account a where a.storehouse_id = h.storehouse_id
            and a.vessel_id = s.container_id and a.inflow > a.outflow)
          or not exists (select from book.account a where a.storehouse_id = h.storehouse_id
            and a.vessel_id = s.container_id and a.inflow > 0)
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
create trigger container_move_joins_holds after insert on book.container_move
  for each statement execute function book.extend_holds();

/*
 * A hold that begins while a bag or container is being written down sees none of it, and is not seen by it. So whoever writes
 * one waits at its end for the book, which each hold has locked until it is written, and looks once more. Once a transaction
 * is enough: whatever it wrote is there by then.
 */
create function book.extend_holds_at_last() returns trigger language plpgsql set search_path = pg_catalog, pg_temp as $$
declare
  this text := pg_current_xact_id()::text;
begin
  if book.current_storehouse() is null or current_setting('app.holds_extended', true) = this then return null; end if;
  perform set_config('app.holds_extended', this, true);
  perform book.lock_book();
  insert into book.hold_vessel (storehouse_id, hold_id, vessel_id, reached_at)
    select h.storehouse_id, h.hold_id, r.vessel_id, greatest(h.held_at, e.recorded_at)
    from book.hold h cross join lateral book.list_reach(h.storehouse_id, h.hold_id) r
    left join book.book_state b on b.storehouse_id = h.storehouse_id
    left join book.entry e on e.storehouse_id = b.storehouse_id and e.entry_no = b.last_entry_no
    where h.storehouse_id = book.current_storehouse() and h.released_at is null and h.scope not in ('bag', 'containers')
    on conflict do nothing;
  return null;
end $$;
create constraint trigger bag_joins_holds_at_last after insert on book.bag
  deferrable initially deferred for each row execute function book.extend_holds_at_last();
create constraint trigger container_joins_holds_at_last after insert on book.container
  deferrable initially deferred for each row execute function book.extend_holds_at_last();
create constraint trigger container_move_joins_holds_at_last after insert on book.container_move
  deferrable initially deferred for each row execute function book.extend_holds_at_last();
create constraint trigger packing_pour_joins_holds_at_last after insert on book.packing_pour
  deferrable initially deferred for each row execute function book.extend_holds_at_last();
create constraint trigger re_can_joins_holds_at_last after insert on book.re_can
  deferrable initially deferred for each row execute function book.extend_holds_at_last();
