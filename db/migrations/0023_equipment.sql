-- The group's own things as they are lent: pieces that are alike, parts, bookings, loans, service, and who waits.
create extension if not exists btree_gist; -- trusted: whoever owns the database may

alter table book.equipment_item
  add column cautions text not null default '',
  add column deposit_minor_units book.amount not null default 0,
  add column fee_minor_units book.amount not null default 0, -- for a loan
  add column late_fee_minor_units book.amount not null default 0, -- for each day begun after the grace
  add column damage_note text not null default '', -- what the group charges for damage, in its own words
  add column pre_minutes integer not null default 0, -- fetching and setting up
  add column post_minutes integer not null default 0, -- cleaning, cooling, the way back
  add column longest_days integer not null default 3,
  add column may_relay boolean not null default false,
  add column service_every_uses integer,
  add column service_every_days integer,
  add constraint equipment_item_buffers_in_range
    check (pre_minutes between 0 and 20160 and post_minutes between 0 and 20160),
  add constraint equipment_item_longest_in_range check (longest_days between 1 and 90),
  add constraint equipment_item_service_positive check (service_every_uses > 0 and service_every_days > 0);
grant update (name, kind_note, value_minor_units, kept_where, cautions, deposit_minor_units, fee_minor_units,
  late_fee_minor_units, damage_note, pre_minutes, post_minutes, longest_days, may_relay, service_every_uses,
  service_every_days, version) on book.equipment_item to sheafbook_app;

-- One piece of a thing; dollies that are alike are pieces of one item. What was brought over from a spreadsheet has none
-- until its keeper has looked at it.
create table book.equipment_unit (
  storehouse_id uuid not null,
  equipment_unit_id uuid not null default uuidv7(),
  equipment_item_id uuid not null,
  unit_no integer not null,
  unit_code text not null,
  condition text not null default 'ready',
  condition_note text not null default '',
  in_use_since date not null, -- service by days is counted from here until the first service
  version integer not null default 1,
  primary key (storehouse_id, equipment_unit_id),
  constraint equipment_unit_item_fk foreign key (storehouse_id, equipment_item_id) references book.equipment_item,
  constraint equipment_unit_of_its_item unique (storehouse_id, equipment_item_id, equipment_unit_id),
  constraint equipment_unit_number_once unique (storehouse_id, equipment_item_id, unit_no),
  constraint equipment_unit_code_once unique (storehouse_id, unit_code),
  constraint equipment_unit_counted_from_one check (unit_no > 0),
  constraint equipment_unit_condition_known check (condition in ('ready', 'dirty', 'broken', 'retired'))
);
alter table book.code_counter drop constraint code_counter_known;
alter table book.code_counter add constraint code_counter_known
  check (counter in ('bag', 'container', 'equipment', 'order', 'paper', 'seat'));
insert into book.code_counter (storehouse_id, counter) select storehouse_id, 'equipment' from book.storehouse;

create table book.equipment_part (
  storehouse_id uuid not null,
  equipment_part_id uuid not null default uuidv7(),
  equipment_item_id uuid not null,
  position integer not null,
  name text not null,
  pieces integer not null,
  is_critical boolean not null,
  value_minor_units book.amount not null, -- what one piece costs to replace
  dropped_at timestamptz, -- loans of before still name it
  primary key (storehouse_id, equipment_part_id),
  constraint equipment_part_item_fk foreign key (storehouse_id, equipment_item_id) references book.equipment_item,
  constraint equipment_part_named check (name ~ '\S' and length(name) <= 120),
  constraint equipment_part_has_pieces check (pieces between 1 and 1000)
);
create unique index equipment_part_name_once on book.equipment_part (storehouse_id, equipment_item_id, name)
  where dropped_at is null;
-- What a piece lacks of its parts; a part that is all there has no row.
create table book.missing_part (
  storehouse_id uuid not null,
  equipment_unit_id uuid not null,
  equipment_part_id uuid not null,
  pieces integer not null,
  primary key (storehouse_id, equipment_unit_id, equipment_part_id),
  constraint missing_part_unit_fk foreign key (storehouse_id, equipment_unit_id) references book.equipment_unit,
  constraint missing_part_part_fk foreign key (storehouse_id, equipment_part_id) references book.equipment_part,
  constraint missing_part_has_pieces check (pieces > 0)
);

-- The buffers are read from the item when the booking is made, and kept: changing the item changes no booking.
create table book.booking (
  storehouse_id uuid not null,
  booking_id uuid not null default uuidv7(),
  equipment_item_id uuid not null,
  equipment_unit_id uuid not null,
  purpose text not null,
  household_id uuid,
  session_id uuid,
  starts_at timestamptz not null,
  ends_at timestamptz not null,
  blocked_from timestamptz not null,
  blocked_to timestamptz not null,
  state text not null default 'booked',
  offered_until timestamptz, -- a time that came free is kept so long for whoever waited for it
  relay_from_id uuid, -- handed on by the borrower of this booking
  relay_agreed_at timestamptz,
  uses integer, -- cans closed, kilograms milled: what service is counted by
  note text not null default '',
  booked_by uuid not null,
  booked_at timestamptz not null,
  version integer not null default 1,
  primary key (storehouse_id, booking_id),
  constraint booking_unit_fk foreign key (storehouse_id, equipment_item_id, equipment_unit_id)
    references book.equipment_unit (storehouse_id, equipment_item_id, equipment_unit_id),
  constraint booking_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint booking_session_fk foreign key (storehouse_id, session_id) references book.packing_session,
  constraint booking_booked_by_fk foreign key (storehouse_id, booked_by) references book.person,
  constraint booking_relay_from_fk foreign key (storehouse_id, relay_from_id) references book.booking
    deferrable, -- who takes it may have booked before who hands it on
  constraint booking_purpose_known check (purpose in ('loan', 'session', 'service')),
  constraint booking_is_for_someone check ((purpose = 'loan') = (household_id is not null)
    and (purpose = 'session') = (session_id is not null)),
  constraint booking_state_known
    check (state in ('asked', 'offered', 'booked', 'out', 'returned', 'cancelled', 'not-fetched')),
  constraint booking_offer_ends check ((state = 'offered') = (offered_until is not null)),
  constraint booking_relay_whole check (relay_agreed_at is null or relay_from_id is not null),
  constraint booking_in_order
    check (starts_at < ends_at and blocked_from <= starts_at and ends_at <= blocked_to),
  constraint booking_uses_counted check (uses >= 0),
  -- Nobody holds a piece while somebody else does, whatever the code does. Half-open: times that touch are free.
  constraint booking_one_at_a_time exclude using gist (storehouse_id with =, equipment_unit_id with =,
    tstzrange(blocked_from, blocked_to, '[)') with &&) where (state in ('offered', 'booked', 'out', 'returned'))
);
create index booking_by_unit on book.booking (storehouse_id, equipment_unit_id, blocked_from);
create index booking_by_household on book.booking (storehouse_id, household_id, starts_at);
create index booking_by_session on book.booking (storehouse_id, session_id);
create unique index booking_handed_on_once on book.booking (storehouse_id, relay_from_id)
  where relay_agreed_at is not null and state in ('booked', 'out', 'returned');

create table book.loan (
  storehouse_id uuid not null,
  loan_id uuid not null default uuidv7(),
  booking_id uuid not null,
  equipment_unit_id uuid not null,
  household_id uuid not null,
  out_at timestamptz not null,
  due_at timestamptz not null,
  in_at timestamptz,
  handed_out_by uuid not null,
  taken_by text not null, -- the name of whoever ticked the parts and took it
  taken_back_by uuid,
  brought_by text,
  condition_in text,
  note_out text not null default '',
  note_in text not null default '',
  deposit_minor_units book.amount not null,
  deposit_from text not null,
  refund_to text,
  refund_minor_units book.amount,
  kept_minor_units book.amount,
  fee_minor_units book.amount,
  late_minor_units book.amount,
  is_late_waived boolean not null default false,
  parts_minor_units book.amount,
  damage_minor_units book.amount,
  relayed_from_id uuid, -- the loan that ended where this one began
  primary key (storehouse_id, loan_id),
  constraint loan_booking_fk foreign key (storehouse_id, booking_id) references book.booking,
  constraint loan_unit_fk foreign key (storehouse_id, equipment_unit_id) references book.equipment_unit,
  constraint loan_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint loan_handed_out_by_fk foreign key (storehouse_id, handed_out_by) references book.person,
  constraint loan_taken_back_by_fk foreign key (storehouse_id, taken_back_by) references book.person,
  constraint loan_relayed_from_fk foreign key (storehouse_id, relayed_from_id) references book.loan
    deferrable,
  constraint loan_booking_once unique (storehouse_id, booking_id),
  constraint loan_relayed_once unique (storehouse_id, relayed_from_id),
  constraint loan_back_after_out check (out_at <= in_at),
  constraint loan_back_whole check (num_nonnulls(in_at, taken_back_by, brought_by, condition_in, refund_to,
    refund_minor_units, kept_minor_units, fee_minor_units, late_minor_units, parts_minor_units, damage_minor_units)
    in (0, 11)),
  constraint loan_condition_known check (condition_in in ('ready', 'dirty', 'broken')),
  constraint loan_deposit_from_known check (deposit_from in ('bank', 'cash_tin', 'household')),
  constraint loan_refund_to_known check (refund_to in ('bank', 'cash_tin', 'household')),
  constraint loan_deposit_settled check (refund_minor_units + kept_minor_units = deposit_minor_units
    and kept_minor_units <= late_minor_units + parts_minor_units + damage_minor_units),
  constraint loan_one_at_a_time exclude using gist (storehouse_id with =, equipment_unit_id with =,
    tstzrange(out_at, in_at, '[)') with &&)
);
create index loan_by_household on book.loan (storehouse_id, household_id, out_at);
create table book.loan_part (
  storehouse_id uuid not null,
  loan_id uuid not null,
  equipment_part_id uuid not null,
  name text not null, -- as the list had it on that day, its worth too
  is_critical boolean not null,
  value_minor_units book.amount not null,
  out_pieces integer not null,
  in_pieces integer,
  primary key (storehouse_id, loan_id, equipment_part_id),
  constraint loan_part_loan_fk foreign key (storehouse_id, loan_id) references book.loan,
  constraint loan_part_part_fk foreign key (storehouse_id, equipment_part_id) references book.equipment_part,
  constraint loan_part_back_of_out check (out_pieces >= 0 and in_pieces between 0 and out_pieces)
);

create table book.maintenance (
  storehouse_id uuid not null,
  maintenance_id uuid not null default uuidv7(),
  equipment_unit_id uuid not null,
  done_on date not null,
  what text not null,
  is_service boolean not null, -- a service starts the count anew, a repair does not
  recorded_by uuid not null,
  recorded_at timestamptz not null,
  primary key (storehouse_id, maintenance_id),
  constraint maintenance_unit_fk foreign key (storehouse_id, equipment_unit_id) references book.equipment_unit,
  constraint maintenance_recorded_by_fk foreign key (storehouse_id, recorded_by) references book.person,
  constraint maintenance_told check (what ~ '\S' and length(what) <= 500)
);
create index maintenance_by_unit on book.maintenance (storehouse_id, equipment_unit_id, done_on);

-- A wish keeps its whole time until that time comes free, or is over.
create table book.equipment_wish (
  storehouse_id uuid not null,
  equipment_wish_id uuid not null default uuidv7(),
  equipment_item_id uuid not null,
  household_id uuid not null,
  starts_at timestamptz not null,
  ends_at timestamptz not null,
  asked_by uuid not null,
  asked_at timestamptz not null,
  ended_at timestamptz,
  booking_id uuid, -- the time that came free and was offered
  primary key (storehouse_id, equipment_wish_id),
  constraint equipment_wish_item_fk foreign key (storehouse_id, equipment_item_id) references book.equipment_item,
  constraint equipment_wish_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint equipment_wish_asked_by_fk foreign key (storehouse_id, asked_by) references book.person,
  constraint equipment_wish_booking_fk foreign key (storehouse_id, booking_id) references book.booking,
  constraint equipment_wish_in_order check (starts_at < ends_at)
);
create unique index equipment_wish_open_once on book.equipment_wish (storehouse_id, equipment_item_id, household_id)
  where ended_at is null;

select book.keep_in_storehouse(t) from unnest(array['book.equipment_unit', 'book.equipment_part', 'book.missing_part',
  'book.booking', 'book.loan', 'book.loan_part', 'book.maintenance', 'book.equipment_wish']::regclass[]) t;
grant select, insert on book.equipment_unit, book.equipment_part, book.booking, book.loan, book.loan_part,
  book.maintenance, book.equipment_wish to sheafbook_app;
grant select, insert, update, delete on book.missing_part to sheafbook_app;
grant update (condition, condition_note, version) on book.equipment_unit to sheafbook_app;
grant update (position, name, pieces, is_critical, value_minor_units, dropped_at) on book.equipment_part to sheafbook_app;
grant update (equipment_unit_id, starts_at, ends_at, blocked_from, blocked_to, state, offered_until, relay_from_id,
  relay_agreed_at, uses, version) on book.booking to sheafbook_app;
grant update (in_at, taken_back_by, brought_by, condition_in, note_in, refund_to, refund_minor_units, kept_minor_units,
  fee_minor_units, late_minor_units, is_late_waived, parts_minor_units, damage_minor_units) on book.loan to sheafbook_app;
grant update (in_pieces) on book.loan_part to sheafbook_app;
grant update (ended_at, booking_id) on book.equipment_wish to sheafbook_app;
