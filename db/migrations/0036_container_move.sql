-- Where each container stood, and since when. A stay lasts until the next one; of two on one day the one written later counts.
create table book.container_move (
  storehouse_id uuid not null,
  container_move_id uuid not null default uuidv7(),
  container_id uuid not null,
  moved_on date not null,
  place_id uuid, -- null: somewhere that the book does not know
  told_tenths integer, -- how warm it was there on the whole, by word of whoever kept it; tenths of a degree Celsius
  moved_by uuid not null,
  moved_at timestamptz not null,
  primary key (storehouse_id, container_move_id),
  constraint container_move_container_fk foreign key (storehouse_id, container_id) references book.container,
  constraint container_move_place_fk foreign key (storehouse_id, place_id) references book.place
    on delete set null (place_id),
  constraint container_move_moved_by_fk foreign key (storehouse_id, moved_by) references book.person,
  constraint container_move_told_of_no_place check (told_tenths is null or place_id is null),
  constraint container_move_told_possible check (told_tenths between -600 and 700),
  -- The latest day on any wall of the world when it was written.
  constraint container_move_happened check (moved_on <= (moved_at at time zone 'UTC')::date + 1)
);
create index container_move_by_container on book.container_move (storehouse_id, container_id, moved_on);
create index container_move_by_place on book.container_move (storehouse_id, place_id) where place_id is not null;

-- Nothing stands anywhere before it is packed. A household's own stands in its own places or the store's, the store's in the store's.
create function book.container_move_fits() returns trigger language plpgsql set search_path = pg_catalog, pg_temp as $$
declare
  packed date;
  owner uuid;
begin
  select c.packed_on, c.household_id into packed, owner from book.container c
    where c.storehouse_id = new.storehouse_id and c.container_id = new.container_id;
  if new.moved_on < packed then
    raise exception 'it was packed on %', packed
      using errcode = 'check_violation', constraint = 'container_move_after_packing';
  end if;
  if new.place_id is not null and not exists (select from book.place p where p.storehouse_id = new.storehouse_id
      and p.place_id = new.place_id and (p.household_id is null or p.household_id = owner)) then
    raise exception 'the place is another household''s'
      using errcode = 'check_violation', constraint = 'container_move_to_own_place';
  end if;
  return null;
end $$;
create constraint trigger container_move_fits after insert on book.container_move deferrable
  for each row execute function book.container_move_fits();

select book.keep_in_storehouse('book.container_move');
-- Where a household's food stands is its own affair; what it can still live on from it is counted for some tasks.
create policy container_move_private on book.container_move as restrictive for all
  using ((storehouse_id, container_id) in (select c.storehouse_id, c.container_id from book.container c
    where c.household_id is null or c.household_id = (select book.current_household())
      or (select book.current_task()) in ('coverage-totals', 'need-first')));
alter policy place_private on book.place
  using (household_id is null or household_id = (select book.current_household())
    or (select book.current_task()) in ('leaving', 'coverage-totals', 'need-first'));
grant select, insert on book.container_move to sheafbook_app;
