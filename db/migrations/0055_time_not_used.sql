-- A time on a line that its household does not come for is free again by itself; that it was stays written, also when the
-- household comes late after all and is given another time.
alter table book.packing_session add column started_at timestamptz;
grant update (started_at) on book.packing_session to sheafbook_app;

alter table book.packing_slot
  add column came_at timestamptz,
  add column freed_at timestamptz,
  drop constraint packing_slot_state_known,
  add constraint packing_slot_state_known check (state in ('booked', 'waiting', 'given-back', 'not-come')),
  add constraint packing_slot_not_come_whole check (state <> 'not-come' or (freed_at is not null and came_at is null));
drop index book.packing_slot_one_open;
create unique index packing_slot_one_open on book.packing_slot (storehouse_id, packing_session_id, household_id)
  where state in ('booked', 'waiting');
grant update (starts_at, ends_at, asked_at, came_at, freed_at) on book.packing_slot to sheafbook_app;
