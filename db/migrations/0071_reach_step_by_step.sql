/*
 * What a hold reaches, as before, in a time that grows with what it reaches and not with the whole book. Each step from a vessel
 * to what was poured out of it goes by the keys of the vessel, its account and its movement: `offset 0` keeps the planner to
 * that way, also where it knows nothing of the tables yet, as in a young storehouse, whose every pour asks for each open hold.
 */
create index container_by_lot on book.container (storehouse_id, lot_id);
create index bag_by_lot on book.bag (storehouse_id, lot_id);
create or replace function book.list_reach(p_storehouse uuid, p_hold uuid) returns table (vessel_id uuid)
  language sql stable parallel safe set search_path = pg_catalog, pg_temp
  begin atomic
    with recursive h as (select * from book.hold where storehouse_id = p_storehouse and hold_id = p_hold),
    lots as materialized (
      select l.lot_id from h join book.lot l on l.storehouse_id = h.storehouse_id
        where l.lot_id = h.lot_id or (l.supplier_id = h.supplier_id and l.supplier_mark = h.supplier_mark)
          or l.food_id = h.food_id),
    named as (
      select b.bag_id as vessel_id from h join book.bag b on b.storehouse_id = h.storehouse_id and b.bag_id = h.bag_id
        where b.decision <> 'refused'
      union
      select b.bag_id from h join book.bag b on b.storehouse_id = h.storehouse_id and b.delivery_id = h.delivery_id
        where b.decision <> 'refused'
      union
      select b.bag_id from h cross join lots l
        cross join lateral (select b.bag_id, b.decision, b.delivery_id from book.bag b
          where b.storehouse_id = p_storehouse and b.lot_id = l.lot_id offset 0) b
        where b.decision <> 'refused' and (h.food_id is null or exists (select from book.delivery d
          where d.storehouse_id = p_storehouse and d.delivery_id = b.delivery_id
            and d.arrived_on between h.from_on and h.to_on))
      union
      select c.container_id from h cross join lots l
        cross join lateral (select c.container_id, c.packed_on from book.container c
          where c.storehouse_id = p_storehouse and c.lot_id = l.lot_id offset 0) c
        where h.food_id is null or c.packed_on between h.from_on and h.to_on
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
        cross join lateral (select s.account_id from book.account s
          where s.storehouse_id = p_storehouse and s.vessel_id = r.vessel_id offset 0) s
        cross join lateral (select m.entry_id, m.destination_id from book.movement m
          where m.storehouse_id = p_storehouse and m.source_id = s.account_id offset 0) m
        cross join lateral (select d.vessel_id from book.account d
          where d.storehouse_id = p_storehouse and d.account_id = m.destination_id
            and d.vessel_kind in ('bag', 'container') offset 0) d
        cross join lateral (select from book.entry e
          where e.storehouse_id = p_storehouse and e.entry_id = m.entry_id and e.reverses_id is null offset 0) e
        where d.vessel_id <> r.vessel_id and not exists (select from (select from book.entry u
          where u.storehouse_id = p_storehouse and u.reverses_id = m.entry_id offset 0) u))
    select r.vessel_id from reached r;
  end;
