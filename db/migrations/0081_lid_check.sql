-- Whether a jar's lid was still drawn down a day after it was closed. Nothing of it is changed afterwards: what was found loose may be
-- closed again, which is a closing of its own that is looked at a day later in its turn.
create table book.lid_check (
  storehouse_id uuid not null,
  lid_check_id uuid not null default uuidv7(),
  container_id uuid not null,
  household_id uuid, -- whose the jar was; null for common stock
  closed_at timestamptz not null, -- the closing that is answered for, or that was made anew
  says text not null,
  note text not null default '',
  checked_by uuid not null,
  checked_at timestamptz not null, -- when somebody looked, or closed it again
  recorded_at timestamptz not null,
  primary key (storehouse_id, lid_check_id),
  constraint lid_check_container_fk foreign key (storehouse_id, container_id) references book.container,
  constraint lid_check_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint lid_check_checked_by_fk foreign key (storehouse_id, checked_by) references book.person,
  constraint lid_check_says_known check (says in ('held', 'loose', 'closed-again')),
  constraint lid_check_said_once unique (storehouse_id, container_id, closed_at, says),
  constraint lid_check_after_closing check (checked_at >= closed_at and (says <> 'closed-again' or checked_at = closed_at))
);
select book.keep_in_storehouse('book.lid_check');
-- What a household finds at home is its own affair; whoever leads the packing looks at what stands in the store, whosever it is.
create policy lid_check_private on book.lid_check as restrictive for all
  using (household_id is null or household_id = (select book.current_household())
    or (select book.current_task()) in ('giving', 'lids'))
  with check (household_id is null or household_id = (select book.current_household())
    or (select book.current_task()) = 'lids');
grant select, insert on book.lid_check to sheafbook_app;

drop policy container_move_private on book.container_move;
create policy container_move_private on book.container_move as restrictive for all
  using ((storehouse_id, container_id) in (select c.storehouse_id, c.container_id from book.container c
    where c.household_id is null or c.household_id = (select book.current_household())
      or (select book.current_task()) in ('coverage-totals', 'need-first', 'hold', 'place-load', 'lids')));
drop policy inspection_private on book.inspection;
create policy inspection_private on book.inspection as restrictive for all
  using (household_id is null or household_id = (select book.current_household())
    or (select book.current_task()) in ('giving', 'lids'))
  with check (household_id is null or household_id = (select book.current_household()));

/*
 * The jars that are shut and hold something, packed since a day: when each was closed last, by a line, by a hand or again, what
 * was said of its lids last, and the last look at it. A household's own and common stock; with `p_in_store` also what others have
 * standing in the store: where a place says so, or where a line closed it and nobody has said where it went. It opens what it
 * reads for itself alone and tells of another household's jar that it stands in the store, not where.
 */
create function book.list_lids(p_storehouse uuid, p_since date, p_in_store boolean)
  returns table (container_id uuid, household_id uuid, packing_session_id uuid, closed_at timestamptz, is_in_store boolean,
    says text, said_of timestamptz, checked_at timestamptz, looked_at timestamptz, outcome text)
  language plpgsql set search_path = pg_catalog, pg_temp as $$
#variable_conflict use_column
declare
  task_before text := coalesce(current_setting('app.task', true), '');
  household uuid := book.current_household();
begin
  perform set_config('app.task', 'lids', true);
  return query
    with jar as (
      select c.storehouse_id, c.container_id, c.household_id, c.packed_on, s.time_zone, l.packing_session_id, l.closed_at,
        coalesce((select p.place_id is not null and o.household_id is null from book.container_place p
            left join book.place o on o.storehouse_id = p.storehouse_id and o.place_id = p.place_id
            where p.storehouse_id = c.storehouse_id and p.container_id = c.container_id),
          c.household_id is null or l.packing_session_id is not null) as is_in_store
      from book.container c
      join book.storehouse s on s.storehouse_id = c.storehouse_id
      join book.container_kind k on k.storehouse_id = c.storehouse_id and k.container_kind_id = c.container_kind_id
      left join book.line_closed l on l.storehouse_id = c.storehouse_id and l.container_id = c.container_id
        and l.undone_entry_id is null
      where c.storehouse_id = p_storehouse and c.packed_on >= p_since and c.opened_on is null and k.barrier = 'glass'
        and exists (select from book.account a where a.storehouse_id = c.storehouse_id and a.vessel_id = c.container_id
          and a.inflow > a.outflow))
    select j.container_id, j.household_id, j.packing_session_id, greatest(f.closed_at, again.closed_at), j.is_in_store,
      said.says, said.closed_at, said.checked_at, look.inspected_at, look.outcome
    from jar j
    -- What was poured in came out of another vessel of ours; of a hand's first pour that is written down later, the day's end counts.
    cross join lateral (select max(p.at) as closed_at from (
      select case when e.what in ('session-poured', 're-canned') and j.closed_at is not null then j.closed_at
          when e.entry_no = min(e.entry_no) over () then
            least(e.recorded_at, (j.packed_on + 1)::timestamp at time zone j.time_zone)
          else e.recorded_at end as at
        from book.account d
        join book.movement m on m.storehouse_id = d.storehouse_id and m.destination_id = d.account_id
        join book.account s on s.storehouse_id = m.storehouse_id and s.account_id = m.source_id
        join book.entry e on e.storehouse_id = m.storehouse_id and e.entry_id = m.entry_id and e.reverses_id is null
        where d.storehouse_id = j.storehouse_id and d.vessel_id = j.container_id
          and s.vessel_kind in ('bag', 'container') and s.vessel_id <> j.container_id
          and not exists (select from book.entry u where u.storehouse_id = e.storehouse_id and u.reverses_id = e.entry_id)
      ) p) f
    left join lateral (select max(a.closed_at) as closed_at from book.lid_check a
      where a.storehouse_id = j.storehouse_id and a.container_id = j.container_id and a.says = 'closed-again') again on true
    left join lateral (select a.says, a.closed_at, a.checked_at from book.lid_check a
      where a.storehouse_id = j.storehouse_id and a.container_id = j.container_id and a.says <> 'closed-again'
      order by a.lid_check_id desc limit 1) said on true
    left join lateral (select i.inspected_at, i.outcome from book.inspection i
      where i.storehouse_id = j.storehouse_id and i.container_id = j.container_id
      order by i.inspection_id desc limit 1) look on true
    where f.closed_at is not null
      and (j.household_id is null or j.household_id = household or (p_in_store and j.is_in_store));
  perform set_config('app.task', task_before, true);
end $$;
revoke execute on function book.list_lids from public;
grant execute on function book.list_lids to sheafbook_app;

-- Every look at a container, a lid that was found loose among them until the jar was closed again and its lid held.
create view book.any_look with (security_invoker = true) as
  select storehouse_id, inspection_id, container_id, household_id, how, findings, best, outcome, damaged_kernels, sample_grams,
    note, entry_id, inspected_at, inspected_on from book.inspection
  union all
  select l.storehouse_id, l.lid_check_id, l.container_id, l.household_id, 'outside', array['loose-seal'], 'kitchen-soon',
    'kitchen-soon', null, null, l.note, null, l.checked_at, (l.checked_at at time zone s.time_zone)::date
    from book.lid_check l join book.storehouse s on s.storehouse_id = l.storehouse_id
    where l.says = 'loose' and not exists (select from book.lid_check h where h.storehouse_id = l.storehouse_id
      and h.container_id = l.container_id and h.says = 'held' and h.closed_at > l.closed_at);
grant select on book.any_look to sheafbook_app;

create or replace function book.list_looks(p_storehouse uuid, p_containers uuid[])
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
    from book.any_look i
    join book.container c on c.storehouse_id = i.storehouse_id and c.container_id = i.container_id
    cross join lateral (select i.household_id is null or i.household_id is not distinct from household as is_own) o
    where i.storehouse_id = p_storehouse and i.container_id = any(p_containers)
      and (o.is_own or c.household_id is null or c.household_id = household
        or task_before in ('giving', 'coverage-totals', 'need-first')
        or exists (select from book.offer_container f where f.storehouse_id = c.storehouse_id
          and f.container_id = c.container_id and f.ended_at is null));
  perform set_config('app.task', task_before, true);
end $$;

create or replace function book.list_found_for_giving(p_storehouse uuid, p_containers uuid[])
  returns table (container_id uuid, findings text[], outcome text)
  language plpgsql set search_path = pg_catalog, pg_temp as $$
#variable_conflict use_column
declare
  task_before text := coalesce(current_setting('app.task', true), '');
begin
  perform set_config('app.task', 'giving', true);
  return query select distinct on (i.container_id) i.container_id, i.findings, i.outcome from book.any_look i
    where i.storehouse_id = p_storehouse and i.container_id = any(p_containers)
    order by i.container_id, i.inspection_id desc;
  perform set_config('app.task', task_before, true);
end $$;
