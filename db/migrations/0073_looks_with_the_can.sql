-- What was found on a can concerns whoever has it now: the looks that an earlier household took at it go with it, without who
-- took them, what that household noted beside them, or the entry that it booked.
/*
 * Every look at those of some containers that whoever reads may know of: common stock, the household's own, what stands
 * offered to it, and whatever a task reckons with. It opens the looks for itself alone.
 */
create function book.list_looks(p_storehouse uuid, p_containers uuid[])
  returns table (inspection_id uuid, container_id uuid, is_own boolean, how text, findings text[], best text, outcome text,
    damaged_kernels integer, sample_grams integer, note text, entry_id uuid, inspected_at timestamptz, inspected_on date)
  language plpgsql set search_path = pg_catalog, pg_temp as $$
#variable_conflict use_column
declare
  task_before text := coalesce(current_setting('app.task', true), '');
  household uuid := book.current_household();
begin
  perform set_config('app.task', 'giving', true);
  return query select i.inspection_id, i.container_id, o.is_own, i.how, i.findings, i.best, i.outcome, i.damaged_kernels,
      i.sample_grams, case when o.is_own then i.note else '' end, case when o.is_own then i.entry_id end, i.inspected_at,
      i.inspected_on
    from book.inspection i
    join book.container c on c.storehouse_id = i.storehouse_id and c.container_id = i.container_id
    cross join lateral (select i.household_id is null or i.household_id is not distinct from household as is_own) o
    where i.storehouse_id = p_storehouse and i.container_id = any(p_containers)
      and (o.is_own or c.household_id is null or c.household_id = household
        or task_before in ('giving', 'coverage-totals', 'need-first')
        or exists (select from book.offer_container f where f.storehouse_id = c.storehouse_id
          and f.container_id = c.container_id and f.ended_at is null));
  perform set_config('app.task', task_before, true);
end $$;
revoke execute on function book.list_looks from public;
grant execute on function book.list_looks to sheafbook_app;
