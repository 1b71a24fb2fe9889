-- A booked packing day: what households want packed, when on which line, and who helps.
create extension if not exists btree_gist;

create table book.packing_session (
  storehouse_id uuid not null references book.storehouse,
  packing_session_id uuid not null default uuidv7(),
  name text not null,
  place text not null default '',
  starts_at timestamptz not null,
  ends_at timestamptz not null,
  lines smallint not null,
  people_a_line smallint not null,
  stations jsonb not null, -- [{name, secondsPerUnit, staysAlone}], as the plan reads them
  setup_minutes smallint not null,
  break_minutes smallint not null,
  clean_down_minutes smallint not null,
  line_fee_minor_units book.amount not null, -- for each container that was filled
  stage text not null default 'open',
  version integer not null default 1,
  created_by uuid not null,
  created_at timestamptz not null,
  signed_by uuid,
  signed_at timestamptz,
  ended_because text not null default '', -- why it was called off
  primary key (storehouse_id, packing_session_id),
  constraint packing_session_created_by_fk foreign key (storehouse_id, created_by) references book.person,
  constraint packing_session_signed_by_fk foreign key (storehouse_id, signed_by) references book.person,
  constraint packing_session_name_once unique (storehouse_id, name),
  constraint packing_session_named check (name ~ '\S'),
  constraint packing_session_within_a_day check (ends_at > starts_at and ends_at <= starts_at + interval '24 hours'),
  constraint packing_session_lines_in_range check (lines between 1 and 20),
  constraint packing_session_people_in_range check (people_a_line between 1 and 30),
  constraint packing_session_minutes_in_range check (setup_minutes between 0 and 600
    and break_minutes between 0 and 600 and clean_down_minutes between 0 and 600),
  constraint packing_session_stage_known check (stage in ('open', 'running', 'signed', 'settled', 'called-off')),
  constraint packing_session_signed_whole check ((signed_by is null) = (signed_at is null)
    and (stage in ('signed', 'settled')) = (signed_by is not null))
);

-- What a household wants packed: so many containers alike, by whole grams each.
create table book.packing_wish (
  storehouse_id uuid not null,
  packing_wish_id uuid not null default uuidv7(),
  packing_session_id uuid not null,
  household_id uuid not null,
  food_id uuid not null,
  container_kind_id uuid not null,
  treatment text not null,
  containers integer not null,
  grams_each book.amount not null,
  position integer not null,
  entered_by uuid not null,
  primary key (storehouse_id, packing_wish_id),
  constraint packing_wish_session_fk foreign key (storehouse_id, packing_session_id) references book.packing_session,
  constraint packing_wish_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint packing_wish_food_fk foreign key (storehouse_id, food_id) references book.food,
  constraint packing_wish_kind_fk foreign key (storehouse_id, container_kind_id) references book.container_kind,
  constraint packing_wish_entered_by_fk foreign key (storehouse_id, entered_by) references book.person,
  constraint packing_wish_place_once unique (storehouse_id, packing_session_id, household_id, position),
  constraint packing_wish_treatment_known check (treatment in ('oxygen-absorber', 'dry-ice', 'vacuum', 'nitrogen-flush',
    'freeze-thaw-freeze', 'food-grade-earth', 'none')),
  constraint packing_wish_counts_something check (containers between 1 and 5000 and grams_each > 0)
);

-- A household's time on a line. No two of a line overlap, whatever the code does; touching is allowed.
create table book.packing_slot (
  storehouse_id uuid not null,
  packing_slot_id uuid not null default uuidv7(),
  packing_session_id uuid not null,
  household_id uuid not null,
  line smallint, -- null while it waits for one
  starts_at timestamptz not null,
  ends_at timestamptz not null,
  state text not null,
  asked_at timestamptz not null,
  asked_by uuid not null,
  primary key (storehouse_id, packing_slot_id),
  constraint packing_slot_session_fk foreign key (storehouse_id, packing_session_id) references book.packing_session,
  constraint packing_slot_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint packing_slot_asked_by_fk foreign key (storehouse_id, asked_by) references book.person,
  constraint packing_slot_state_known check (state in ('booked', 'waiting', 'given-back')),
  constraint packing_slot_has_its_line check (state <> 'booked' or line is not null),
  constraint packing_slot_takes_time check (ends_at > starts_at),
  constraint packing_slot_line_at_a_time exclude using gist (storehouse_id with =, packing_session_id with =,
    line with =, tstzrange(starts_at, ends_at) with &&) where (state = 'booked')
);
create unique index packing_slot_one_open on book.packing_slot (storehouse_id, packing_session_id, household_id)
  where state <> 'given-back';

-- Who said that they come to help, and whether they came.
create table book.packing_hand (
  storehouse_id uuid not null,
  packing_session_id uuid not null,
  person_id uuid not null,
  state text not null,
  may_seam boolean not null, -- trained at the seamer
  may_lift boolean not null, -- more than 10 kg
  said_at timestamptz not null,
  primary key (storehouse_id, packing_session_id, person_id),
  constraint packing_hand_session_fk foreign key (storehouse_id, packing_session_id) references book.packing_session,
  constraint packing_hand_person_fk foreign key (storehouse_id, person_id) references book.person,
  constraint packing_hand_state_known check (state in ('coming', 'came', 'stayed-away', 'taken-back'))
);
create index packing_hand_by_person on book.packing_hand (storehouse_id, person_id);

select book.keep_in_storehouse(t) from unnest(array['book.packing_session', 'book.packing_wish', 'book.packing_slot',
  'book.packing_hand']::regclass[]) t;
grant select, insert on book.packing_session, book.packing_slot, book.packing_hand to sheafbook_app;
grant select, insert, delete on book.packing_wish to sheafbook_app;
grant update (name, place, starts_at, ends_at, lines, people_a_line, stations, setup_minutes, break_minutes,
  clean_down_minutes, line_fee_minor_units, stage, version, signed_by, signed_at, ended_because)
  on book.packing_session to sheafbook_app;
grant update (line, state) on book.packing_slot to sheafbook_app;
grant update (state, may_seam, may_lift, said_at) on book.packing_hand to sheafbook_app;

-- The order of foods keeps a food for an allergic eater ahead of what it must not meet. Whoever plans learns the flag, no name.
alter policy eater_private on book.eater
  using (household_id = (select book.current_household())
    or (select book.current_task()) in ('coverage-totals', 'need-first', 'leaving', 'import', 'packing'));

alter table book.notice drop constraint notice_kind_known;
alter table book.notice add constraint notice_kind_known
  check (kind in ('written', 'stage', 'landing-moved', 'held', 'released', 'packing'));
