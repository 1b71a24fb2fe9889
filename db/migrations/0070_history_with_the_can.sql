-- What is known of a can goes with it when it changes hands: how warm it stood, and what the last look at it found; not where
-- it stood, nor who found it.
drop policy place_warmth_private on book.place_warmth;
create policy place_warmth_private on book.place_warmth as restrictive for all
  using ((storehouse_id, place_id) in (select p.storehouse_id, p.place_id from book.place p)
    or (select book.current_task()) = 'kept-history')
  with check ((storehouse_id, place_id) in (select p.storehouse_id, p.place_id from book.place p));

/*
 * How warm it was where some containers stood, for the days on which they stood there: of containers whose moves the reader may
 * see, in whosever place that was. It opens the readings for itself alone.
 */
create function book.list_kept_warmth(p_storehouse uuid, p_containers uuid[]) returns setof book.place_warmth
  language plpgsql set search_path = pg_catalog, pg_temp as $$
declare
  task_before text := coalesce(current_setting('app.task', true), '');
begin
  perform set_config('app.task', 'kept-history', true);
  return query select distinct w.* from book.container_move m
    join book.place_warmth w on w.storehouse_id = m.storehouse_id and w.place_id = m.place_id and w.to_on > m.moved_on
      and w.from_on < coalesce((select min(l.moved_on) from book.container_move l where l.storehouse_id = m.storehouse_id
        and l.container_id = m.container_id
        and (l.moved_on, l.moved_at, l.container_move_id) > (m.moved_on, m.moved_at, m.container_move_id)), 'infinity')
    where m.storehouse_id = p_storehouse and m.container_id = any(p_containers);
  perform set_config('app.task', task_before, true);
end $$;
revoke execute on function book.list_kept_warmth from public;
grant execute on function book.list_kept_warmth to sheafbook_app;

drop policy inspection_private on book.inspection;
create policy inspection_private on book.inspection as restrictive for all
  using (household_id is null or household_id = (select book.current_household())
    or (select book.current_task()) = 'giving')
  with check (household_id is null or household_id = (select book.current_household()));

-- What the last look at each of some containers found, whoever looked: for whoever gives them away.
create function book.list_found_for_giving(p_storehouse uuid, p_containers uuid[])
  returns table (container_id uuid, findings text[], outcome text)
  language plpgsql set search_path = pg_catalog, pg_temp as $$
#variable_conflict use_column
declare
  task_before text := coalesce(current_setting('app.task', true), '');
begin
  perform set_config('app.task', 'giving', true);
  return query select distinct on (i.container_id) i.container_id, i.findings, i.outcome from book.inspection i
    where i.storehouse_id = p_storehouse and i.container_id = any(p_containers)
    order by i.container_id, i.inspection_id desc;
  perform set_config('app.task', task_before, true);
end $$;
revoke execute on function book.list_found_for_giving from public;
grant execute on function book.list_found_for_giving to sheafbook_app;
