-- Stock that came as a gift or from elsewhere: what was asked about its history, a lot of its own, and its donor apart.
create table book.intake (
  storehouse_id uuid not null,
  lot_id uuid not null,
  household_id uuid, -- whose it became; null for common stock
  packed_by text not null,
  packed_how text not null,
  summers text not null,
  harm text not null,
  pests text not null,
  opened text not null,
  is_unknown_history boolean not null,
  allergens_met text not null default '', -- what was in the kitchen that packed it
  note text not null default '',
  taken_by uuid not null,
  taken_at timestamptz not null,
  primary key (storehouse_id, lot_id),
  constraint intake_lot_fk foreign key (storehouse_id, lot_id) references book.lot,
  constraint intake_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint intake_taken_by_fk foreign key (storehouse_id, taken_by) references book.person,
  constraint intake_answers_known check (packed_by in ('paper', 'memory', 'unknown')
    and packed_how in ('bought-sealed', 'home-packed', 'unknown') and summers in ('cellar', 'kitchen', 'garage', 'unknown')
    and pests in ('no', 'yes', 'unknown') and opened in ('no', 'yes', 'unknown')),
  constraint intake_never_near_chemicals check (harm in ('never', 'wet', 'unknown')),
  constraint intake_unknown_is_cautious check (is_unknown_history
    = (packed_by = 'unknown' or summers = 'unknown' or harm in ('wet', 'unknown')))
);
create index intake_by_household on book.intake (storehouse_id, household_id);

-- Who gave it: read for a purpose only, and every reading is written down.
create table book.intake_donor (
  storehouse_id uuid not null,
  lot_id uuid not null,
  household_id uuid,
  donor text not null,
  primary key (storehouse_id, lot_id),
  constraint intake_donor_intake_fk foreign key (storehouse_id, lot_id) references book.intake,
  constraint intake_donor_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint intake_donor_named check (donor ~ '\S')
);
create table book.donor_reading (
  storehouse_id uuid not null,
  donor_reading_id uuid not null default uuidv7(),
  lot_id uuid not null,
  purpose text not null,
  read_by uuid not null,
  read_at timestamptz not null,
  primary key (storehouse_id, donor_reading_id),
  constraint donor_reading_intake_fk foreign key (storehouse_id, lot_id) references book.intake,
  constraint donor_reading_read_by_fk foreign key (storehouse_id, read_by) references book.person,
  constraint donor_reading_has_its_purpose check (purpose ~ '\S')
);

-- A few seeds laid to sprout, or a loaf baked: how the food of a lot does its work, which ages before its safety does.
create table book.small_test (
  storehouse_id uuid not null,
  small_test_id uuid not null default uuidv7(),
  container_id uuid not null,
  lot_id uuid not null,
  household_id uuid, -- whose the container was; null for common stock
  kind text not null,
  laid integer, -- seeds
  sprouted integer,
  note text not null default '',
  tested_on date not null,
  tested_by uuid not null,
  primary key (storehouse_id, small_test_id),
  constraint small_test_container_fk foreign key (storehouse_id, container_id) references book.container,
  constraint small_test_lot_fk foreign key (storehouse_id, lot_id) references book.lot,
  constraint small_test_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint small_test_tested_by_fk foreign key (storehouse_id, tested_by) references book.person,
  constraint small_test_kind_known check (kind in ('sprout', 'bake', 'cook')),
  constraint small_test_counts_seeds check ((kind = 'sprout') = (laid is not null) and (laid is null) = (sprouted is null)
    and laid between 1 and 10000 and sprouted between 0 and laid),
  constraint small_test_says_something check (kind = 'sprout' or note ~ '\S')
);
create index small_test_by_lot on book.small_test (storehouse_id, lot_id);

select book.keep_in_storehouse(t) from unnest(array['book.intake', 'book.intake_donor', 'book.donor_reading',
  'book.small_test']::regclass[]) t;
create policy intake_private on book.intake as restrictive for all
  using (household_id is null or household_id = (select book.current_household()));
create policy small_test_private on book.small_test as restrictive for all
  using (household_id is null or household_id = (select book.current_household()));
create policy intake_donor_private on book.intake_donor as restrictive for select
  using (household_id = (select book.current_household())
    or (household_id is null and (select book.current_task()) = 'donor'));
grant select, insert on book.intake, book.intake_donor, book.donor_reading, book.small_test to sheafbook_app;
