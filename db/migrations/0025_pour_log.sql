-- What was poured at a packing session: the bags that came, each container, and the absorbers that stood open.
-- A household's part of a bag that came to the session: what was in it, and what was weighed back at the end.
create table book.packing_bag (
  storehouse_id uuid not null,
  packing_session_id uuid not null,
  bag_id uuid not null,
  household_id uuid not null,
  brought_grams book.amount not null,
  brought_by uuid not null,
  brought_at timestamptz not null,
  left_grams book.amount, -- as weighed; null until then
  difference_because text not null default '',
  primary key (storehouse_id, packing_session_id, bag_id, household_id),
  constraint packing_bag_session_fk foreign key (storehouse_id, packing_session_id) references book.packing_session,
  constraint packing_bag_bag_fk foreign key (storehouse_id, bag_id) references book.bag,
  constraint packing_bag_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint packing_bag_brought_by_fk foreign key (storehouse_id, brought_by) references book.person,
  constraint packing_bag_holds_something check (brought_grams > 0)
);

-- One container filled at a session. Its serial is its place in the order in which the line closed containers.
create table book.packing_pour (
  storehouse_id uuid not null,
  packing_pour_id uuid not null default uuidv7(),
  packing_session_id uuid not null,
  line smallint not null,
  serial integer not null,
  household_id uuid not null,
  bag_id uuid not null,
  container_id uuid not null,
  target_grams book.amount not null,
  grams book.amount not null,
  treatment text not null,
  entry_id uuid not null,
  poured_by uuid not null,
  poured_at timestamptz not null, -- when it happened; it may have waited on a phone
  recorded_at timestamptz not null,
  undone_entry_id uuid,
  primary key (storehouse_id, packing_pour_id),
  constraint packing_pour_bag_brought_fk foreign key (storehouse_id, packing_session_id, bag_id, household_id)
    references book.packing_bag,
  constraint packing_pour_container_fk foreign key (storehouse_id, container_id) references book.container,
  constraint packing_pour_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint packing_pour_undone_entry_fk foreign key (storehouse_id, undone_entry_id) references book.entry,
  constraint packing_pour_poured_by_fk foreign key (storehouse_id, poured_by) references book.person,
  constraint packing_pour_serial_once unique (storehouse_id, packing_session_id, line, serial),
  constraint packing_pour_container_once unique (storehouse_id, container_id),
  constraint packing_pour_serial_counted check (line between 1 and 20 and serial > 0),
  constraint packing_pour_weighs_something check (grams > 0 and target_grams > 0)
);
create index packing_pour_by_entry on book.packing_pour (storehouse_id, entry_id);

-- A pack of absorbers stands open from one moment to another; the clock warns in between.
create table book.absorber_pack (
  storehouse_id uuid not null,
  absorber_pack_id uuid not null default uuidv7(),
  packing_session_id uuid not null,
  size_millilitres integer not null,
  packets integer not null,
  opened_at timestamptz not null,
  opened_by uuid not null,
  shut_at timestamptz,
  packets_left integer,
  primary key (storehouse_id, absorber_pack_id),
  constraint absorber_pack_session_fk foreign key (storehouse_id, packing_session_id) references book.packing_session,
  constraint absorber_pack_opened_by_fk foreign key (storehouse_id, opened_by) references book.person,
  constraint absorber_pack_holds_some check (size_millilitres > 0 and packets between 1 and 10000),
  constraint absorber_pack_shut_after_opened check (shut_at >= opened_at),
  constraint absorber_pack_shut_whole check ((shut_at is null) = (packets_left is null)
    and packets_left between 0 and packets)
);

select book.keep_in_storehouse(t)
  from unnest(array['book.packing_bag', 'book.packing_pour', 'book.absorber_pack']::regclass[]) t;
grant select, insert on book.packing_bag, book.packing_pour, book.absorber_pack to sheafbook_app;
grant update (left_grams, difference_because) on book.packing_bag to sheafbook_app;
grant update (undone_entry_id) on book.packing_pour to sheafbook_app;
grant update (shut_at, packets_left) on book.absorber_pack to sheafbook_app;
