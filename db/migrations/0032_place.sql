-- Where containers stand and how warm it was there. A household's places are its own affair; the store's are everybody's.
create table book.place (
  storehouse_id uuid not null references book.storehouse,
  place_id uuid not null default uuidv7(),
  household_id uuid, -- null: a place of the store
  name text not null,
  kind text not null,
  is_lit boolean, -- these three: null where nobody has said
  is_damp boolean,
  is_rodent_proof boolean,
  version integer not null default 1,
  primary key (storehouse_id, place_id),
  constraint place_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint place_name_once unique nulls not distinct (storehouse_id, household_id, name),
  constraint place_named check (name ~ '\S'),
  constraint place_kind_known check (kind in ('cellar', 'pantry', 'kitchen', 'room', 'garage', 'shed', 'attic', 'cold-room',
    'freezer', 'other'))
);

-- A file of a logger that was taken in. Its readings are kept by the day; taking it back takes those along.
create table book.place_log (
  storehouse_id uuid not null,
  place_log_id uuid not null default uuidv7(),
  place_id uuid not null,
  file_name text not null,
  file_hash text not null,
  first_on date not null,
  last_on date not null,
  readings integer not null,
  bad_lines integer not null,
  taken_by uuid not null,
  taken_at timestamptz not null,
  primary key (storehouse_id, place_log_id),
  constraint place_log_place_fk foreign key (storehouse_id, place_id) references book.place on delete cascade,
  constraint place_log_taken_by_fk foreign key (storehouse_id, taken_by) references book.person,
  constraint place_log_runs_forward check (first_on <= last_on),
  constraint place_log_counted check (readings > 0 and bad_lines >= 0)
);
create index place_log_by_place on book.place_log (storehouse_id, place_id);

-- How warm a place was over a span of days: a month that was typed, or a day of a logger. No two spans of a place overlap.
-- Tenths of a degree Celsius; age_tenths is the steady warmth at which food ages as much.
create table book.place_warmth (
  storehouse_id uuid not null,
  place_id uuid not null,
  from_on date not null,
  to_on date not null, -- the first day after
  age_tenths integer not null,
  mean_tenths integer not null,
  coldest_tenths integer not null,
  warmest_tenths integer not null,
  readings integer not null, -- 0 for what was typed
  place_log_id uuid,
  primary key (storehouse_id, place_id, from_on),
  constraint place_warmth_place_fk foreign key (storehouse_id, place_id) references book.place on delete cascade,
  constraint place_warmth_log_fk foreign key (storehouse_id, place_log_id) references book.place_log on delete cascade,
  constraint place_warmth_runs_forward check (from_on < to_on),
  constraint place_warmth_possible check (coldest_tenths between -600 and 700 and warmest_tenths between -600 and 700
    and coldest_tenths <= mean_tenths and mean_tenths <= warmest_tenths and age_tenths between -600 and 700),
  constraint place_warmth_of_a_log check ((place_log_id is null) = (readings = 0)),
  constraint place_warmth_once exclude using gist (storehouse_id with =, place_id with =,
    daterange(from_on, to_on) with &&)
);
create index place_warmth_by_log on book.place_warmth (storehouse_id, place_log_id);

select book.keep_in_storehouse(t) from unnest(array['book.place', 'book.place_log', 'book.place_warmth']::regclass[]) t;
create policy place_private on book.place as restrictive for all
  using (household_id is null or household_id = (select book.current_household())
    or (select book.current_task()) = 'leaving')
  with check (household_id is null or household_id = (select book.current_household()));
-- Whoever may see a place may see its record.
create policy place_log_private on book.place_log as restrictive for all
  using ((storehouse_id, place_id) in (select storehouse_id, place_id from book.place));
create policy place_warmth_private on book.place_warmth as restrictive for all
  using ((storehouse_id, place_id) in (select storehouse_id, place_id from book.place));
grant select, insert, delete on book.place, book.place_log, book.place_warmth to sheafbook_app;
grant update (name, kind, is_lit, is_damp, is_rodent_proof, version) on book.place to sheafbook_app;
