-- What the treasurer does beside posting: writing debts off, and closing the books through a day.
create table book.write_off (
  storehouse_id uuid not null,
  write_off_id uuid not null default uuidv7(),
  household_id uuid not null,
  minor_units book.amount not null,
  needs_two boolean not null, -- above what the rules of that day let one person write off alone
  reason text not null,
  asked_by uuid not null,
  asked_at timestamptz not null,
  agreed_by uuid,
  agreed_at timestamptz,
  withdrawn_at timestamptz,
  entry_id uuid,
  primary key (storehouse_id, write_off_id),
  constraint write_off_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint write_off_asked_by_fk foreign key (storehouse_id, asked_by) references book.person,
  constraint write_off_agreed_by_fk foreign key (storehouse_id, agreed_by) references book.person,
  constraint write_off_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint write_off_entry_once unique (storehouse_id, entry_id),
  constraint write_off_explained check (reason ~ '\S'),
  constraint write_off_writes_something_off check (minor_units > 0),
  constraint write_off_agreed_whole check ((agreed_by is null) = (agreed_at is null)),
  constraint write_off_two_logins check (agreed_by <> asked_by),
  constraint write_off_posted_when_agreed check (entry_id is null or not needs_two or agreed_by is not null),
  constraint write_off_withdrawn_before_posting check (entry_id is null or withdrawn_at is null)
);
create index write_off_by_household on book.write_off (storehouse_id, household_id);
select book.keep_in_storehouse('book.write_off');
grant select, insert on book.write_off to sheafbook_app;
grant update (agreed_by, agreed_at, withdrawn_at, entry_id) on book.write_off to sheafbook_app;

-- Who closed the books through which day; what is closed stays so (ledger-notes 6.5).
create table book.period_close (
  storehouse_id uuid not null,
  closed_through date not null,
  closed_by uuid not null,
  closed_at timestamptz not null,
  primary key (storehouse_id, closed_through),
  constraint period_close_closed_by_fk foreign key (storehouse_id, closed_by) references book.person
);
select book.keep_in_storehouse('book.period_close');
grant select, insert on book.period_close to sheafbook_app;
