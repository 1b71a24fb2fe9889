-- What was in a container in doubt went into a new one under the same owner. The old one's code has ended while this stands.
create table book.re_can (
  storehouse_id uuid not null references book.storehouse,
  re_can_id uuid not null default uuidv7(),
  old_container_id uuid not null,
  new_container_id uuid not null,
  household_id uuid not null,
  grams book.amount not null, -- what arrived in the new one
  spilled_grams book.amount not null,
  note text not null default '',
  entry_id uuid not null,
  done_by uuid not null,
  done_at timestamptz not null,
  undone_entry_id uuid,
  primary key (storehouse_id, re_can_id),
  constraint re_can_old_fk foreign key (storehouse_id, old_container_id) references book.container,
  constraint re_can_new_fk foreign key (storehouse_id, new_container_id) references book.container,
  constraint re_can_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint re_can_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint re_can_undone_entry_fk foreign key (storehouse_id, undone_entry_id) references book.entry,
  constraint re_can_done_by_fk foreign key (storehouse_id, done_by) references book.person,
  constraint re_can_new_once unique (storehouse_id, new_container_id),
  constraint re_can_into_another check (old_container_id <> new_container_id),
  constraint re_can_moves_something check (grams > 0 and spilled_grams >= 0)
);
create unique index re_can_old_once on book.re_can (storehouse_id, old_container_id) where undone_entry_id is null;

select book.keep_in_storehouse('book.re_can');
grant select, insert on book.re_can to sheafbook_app;
grant update (undone_entry_id) on book.re_can to sheafbook_app;
