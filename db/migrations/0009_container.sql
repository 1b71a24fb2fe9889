-- What a household wants its share in, and the labelled things that hold it.
create table book.container_wish (
  storehouse_id uuid not null,
  container_wish_id uuid not null default uuidv7(),
  buy_id uuid not null,
  buy_line_id uuid not null,
  household_id uuid not null,
  position integer not null,
  container_kind_id uuid not null,
  grams book.amount, -- null: whatever is left
  entered_by uuid not null,
  primary key (storehouse_id, container_wish_id),
  constraint container_wish_line_fk foreign key (storehouse_id, buy_id, buy_line_id)
    references book.buy_line (storehouse_id, buy_id, buy_line_id),
  constraint container_wish_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint container_wish_kind_fk foreign key (storehouse_id, container_kind_id) references book.container_kind,
  constraint container_wish_entered_by_fk foreign key (storehouse_id, entered_by) references book.person,
  constraint container_wish_place_once unique (storehouse_id, buy_line_id, household_id, position)
);
create table book.container (
  storehouse_id uuid not null,
  container_id uuid not null, -- the same id as its vessel
  vessel_kind text not null default 'container',
  container_code text not null,
  container_kind_id uuid not null,
  lot_id uuid not null, -- one lot a container (ledger-notes 6.8)
  household_id uuid not null,
  packed_on date not null,
  opened_on date,
  note text not null default '',
  primary key (storehouse_id, container_id),
  constraint container_vessel_fk foreign key (storehouse_id, container_id, vessel_kind)
    references book.vessel (storehouse_id, vessel_id, kind),
  constraint container_is_a_vessel check (vessel_kind = 'container'),
  constraint container_code_once unique (storehouse_id, container_code),
  constraint container_kind_fk foreign key (storehouse_id, container_kind_id) references book.container_kind,
  constraint container_lot_fk foreign key (storehouse_id, lot_id) references book.lot,
  constraint container_household_fk foreign key (storehouse_id, household_id) references book.household
);
create index container_by_household on book.container (storehouse_id, household_id);
-- Each kind of number is counted by storehouse. A bag's code is shorter than a container's, so that none is used twice.
create table book.code_counter (
  storehouse_id uuid not null references book.storehouse,
  counter text not null,
  last_number bigint not null default 0,
  primary key (storehouse_id, counter),
  constraint code_counter_known check (counter in ('bag', 'container', 'order', 'seat'))
);
select book.keep_in_storehouse(t) from unnest(array['book.container_wish', 'book.container',
  'book.code_counter']::regclass[]) t;
grant select, insert, delete on book.container_wish to sheafbook_app;
grant select, insert on book.container, book.code_counter to sheafbook_app;
grant update (opened_on, note) on book.container to sheafbook_app;
grant update (last_number) on book.code_counter to sheafbook_app;
