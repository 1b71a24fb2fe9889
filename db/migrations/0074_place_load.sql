-- How much food the shelves of a place carry, as whoever keeps it says, and nothing is set on them beyond that. Food alone is
-- counted: what the containers weigh nobody has written down for every kind.
alter table book.place
  add column most_grams bigint, -- null where nobody has said
  add constraint place_carries_something check (most_grams between 1 and 1000000000);
grant update (most_grams) on book.place to sheafbook_app;

drop policy container_move_private on book.container_move;
create policy container_move_private on book.container_move as restrictive for all
  using ((storehouse_id, container_id) in (select c.storehouse_id, c.container_id from book.container c
    where c.household_id is null or c.household_id = (select book.current_household())
      or (select book.current_task()) in ('coverage-totals', 'need-first', 'hold', 'place-load')));

/*
 * The grams that stand in a place, whosever they are, and would stand there with some containers more. It tells the sum and
 * nothing of whose it is; it opens the moves for itself alone.
 */
create function book.place_load(p_storehouse uuid, p_place uuid, p_more uuid[] default '{}') returns bigint
  language plpgsql set search_path = pg_catalog, pg_temp as $$
declare
  task_before text := coalesce(current_setting('app.task', true), '');
  load bigint;
begin
  perform set_config('app.task', 'place-load', true);
  select coalesce(sum(a.inflow - a.outflow), 0) into load from book.account a
    where a.storehouse_id = p_storehouse and a.vessel_kind = 'container' and a.kind = 'mass'
      and (a.vessel_id = any(p_more) or a.vessel_id in (select s.container_id from book.container_place s
        where s.storehouse_id = p_storehouse and s.place_id = p_place));
  perform set_config('app.task', task_before, true);
  return load;
end $$;
revoke execute on function book.place_load from public;
grant execute on function book.place_load to sheafbook_app;

-- Who sets something there waits for whoever does so at this moment. What is empty, or is said of a past stay, adds no load.
create function book.refuse_overload() returns trigger language plpgsql set search_path = pg_catalog, pg_temp as $$
declare
  onto record;
begin
  for onto in select p.storehouse_id, p.place_id, p.most_grams from book.place p
    where p.most_grams is not null and (p.storehouse_id, p.place_id) in (
      select m.storehouse_id, m.place_id from moved m
        join book.container_place s on s.storehouse_id = m.storehouse_id and s.container_id = m.container_id
          and s.place_id = m.place_id
        join book.account a on a.storehouse_id = m.storehouse_id and a.vessel_id = m.container_id
        where a.inflow > a.outflow)
    order by p.place_id for no key update
  loop
    if book.place_load(onto.storehouse_id, onto.place_id) > onto.most_grams then
      raise exception 'the shelves carry % g', onto.most_grams
        using errcode = 'check_violation', constraint = 'place_carries_no_more';
    end if;
  end loop;
  return null;
end $$;
create trigger container_move_fits_load after insert on book.container_move
  referencing new table as moved for each statement execute function book.refuse_overload();
