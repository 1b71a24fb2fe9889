-- A can that was filled anew was closed on a line too: it has the next serial of that line's sequence.
alter table book.re_can
  add column packing_session_id uuid,
  add column line smallint,
  add column serial integer;

-- What was filled anew before comes after all that its line closed, in the order in which it was done.
with closed as (
  select r.storehouse_id, r.re_can_id, k.packing_session_id, k.line,
    row_number() over (partition by r.storehouse_id, k.packing_session_id, k.line order by r.done_at, r.re_can_id) as turn
  from book.re_can r cross join lateral (
    select c.packing_session_id, c.line from book.seal_hold h
    join book.seal_check c on c.storehouse_id = h.storehouse_id and c.seal_check_id = h.seal_check_id
    where h.storehouse_id = r.storehouse_id and h.container_id = r.old_container_id
    order by c.seal_check_id desc limit 1) k)
update book.re_can r set packing_session_id = c.packing_session_id, line = c.line,
  serial = c.turn + (select coalesce(max(p.serial), 0) from book.packing_pour p where p.storehouse_id = c.storehouse_id
    and p.packing_session_id = c.packing_session_id and p.line = c.line)
  from closed c where r.storehouse_id = c.storehouse_id and r.re_can_id = c.re_can_id;

alter table book.re_can
  alter column packing_session_id set not null,
  alter column line set not null,
  alter column serial set not null,
  add constraint re_can_session_fk foreign key (storehouse_id, packing_session_id) references book.packing_session,
  add constraint re_can_serial_once unique (storehouse_id, packing_session_id, line, serial),
  add constraint re_can_serial_counted check (line between 1 and 20 and serial > 0);

-- Everything that a line closed: what it poured and what was filled anew, what was taken back too.
create view book.line_closed with (security_invoker = true) as
  select storehouse_id, packing_session_id, line, serial, container_id, household_id, grams, poured_at as closed_at,
    undone_entry_id from book.packing_pour
  union all
  select storehouse_id, packing_session_id, line, serial, new_container_id, household_id, grams, done_at, undone_entry_id
    from book.re_can;
grant select on book.line_closed to sheafbook_app;

/*
 * A serial stands in one of the two tables only. Whoever closes something on a line is alone with its session, so that of two
 * that take the same serial the later one finds the earlier.
 */
create function book.refuse_serial_twice() returns trigger language plpgsql set search_path = pg_catalog, pg_temp as $$
begin
  perform from book.packing_session s
    where s.storehouse_id = new.storehouse_id and s.packing_session_id = new.packing_session_id for no key update;
  if (select count(*) from book.line_closed c where c.storehouse_id = new.storehouse_id
      and c.packing_session_id = new.packing_session_id and c.line = new.line and c.serial = new.serial) > 1 then
    raise exception 'the line has closed something with this serial already'
      using errcode = 'unique_violation', constraint = 'line_serial_once';
  end if;
  return null;
end $$;
create trigger packing_pour_serial_is_new after insert or update of packing_session_id, line, serial on book.packing_pour
  for each row execute function book.refuse_serial_twice();
create trigger re_can_serial_is_new after insert or update of packing_session_id, line, serial on book.re_can
  for each row execute function book.refuse_serial_twice();
create trigger re_can_joins_holds after insert on book.re_can for each statement execute function book.extend_holds();

/*
 * The bags and containers that a hold's scope names, and what was poured out of those. A pour that was undone carried
 * nothing, and a can that was filled anew was closed by its line like any other. Chosen containers are named by their rows in hold_vessel.
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
